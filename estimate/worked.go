package estimate

import "filmbuild/products"

// Worked is Estimate with the job that was read, for what is drawn of it. The
// errors are those of Estimate.
func (r *Reader) Worked(data []byte, catalogue *products.Catalogue) (*Job, *Estimate, error) {
	run, err := r.run(data, catalogue)
	if err != nil {
		return nil, nil, err
	}
	return run.job, run.estimate, nil
}
