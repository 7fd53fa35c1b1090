package mesh

import "fmt"

// FileError says why a file cannot be measured. Code is stable:
//
//	empty              no bytes, or no facets
//	wrong_format       not the format its name or head promises
//	count_mismatch     the file's own count and its contents disagree (Want, Got)
//	truncated          the file ends inside something (Want, Got where counted)
//	syntax             a word or number stands where it may not
//	too_few_corners    a facet with fewer than three corners (Want, Got)
//	not_a_number       a corner that is NaN or infinite
//	out_of_range       a coordinate beyond MaxCoordinate
//	unknown_reference  a vertex or solid that the file does not have (Want, Got)
//	too_many           more than a limit of this package allows (Want, Got)
//	line_too_long      a line beyond MaxLineBytes
type FileError struct {
	Code      string
	At        Place
	Want, Got int64  // what the file says or a limit allows, and what is there
	Detail    string // what is wrong and what to do, in one sentence, without the place
}

func (e *FileError) Error() string {
	if e.At.Line > 0 {
		return fmt.Sprintf("line %d: %s", e.At.Line, e.Detail)
	}
	return fmt.Sprintf("byte %d: %s", e.At.Byte, e.Detail)
}

func fault(code string, at Place, detail string, args ...any) *FileError {
	return &FileError{Code: code, At: at, Detail: fmt.Sprintf(detail, args...)}
}

func (e *FileError) counted(want, got int64) *FileError {
	e.Want, e.Got = want, got
	return e
}
