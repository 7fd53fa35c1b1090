package api

import (
	"net/http"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/compare"
	"filmbuild/estimate/fault"
	"filmbuild/estimate/report"
	"filmbuild/estimate/units"
)

// comparisons sets ways of doing a job side by side.
//
//	@Summary		Ways of doing a job, side by side
//	@Description	A base job and named variants go in, each a patch of what it does otherwise. Out comes what each way costs and takes, in all and by step, with its range; all ways are drawn from the same seed, so that differences are real, and it is told in what share of the trials each is cheapest. Nothing is stored. As text the table of the command line, ?units=si or us.
//	@Tags			estimates
//	@Accept			json
//	@Produce		json,text/csv,plain
//	@Param			comparison	body		compare.Comparison	true	"the base job and its variants"
//	@Param			trials		query		int					false	"how many times every uncertain number is drawn"	default(10000)	minimum(1000)	maximum(1000000)
//	@Param			seed		query		int					false	"of the draws; the same seed gives the same answer"	default(1)		minimum(0)	maximum(9007199254740991)
//	@Param			units		query		string				false	"units of the text form"	Enums(si, us)
//	@Success		200			{object}	compare.Result
//	@Failure		400			{object}	Problem
//	@Failure		406			{object}	Problem
//	@Failure		413			{object}	Problem
//	@Failure		415			{object}	Problem
//	@Failure		422			{object}	Problem
//	@Failure		500			{object}	Problem
//	@Router			/v1/comparisons [post]
func (s *Server) comparisons(c *gin.Context) {
	form := accepts(c, "", "application/json", "text/csv", "text/plain")
	if form == "" {
		return
	}
	values, ok := parameters(c)
	if !ok {
		return
	}
	var faults fault.List
	onlyKnown(values, &faults, "trials", "seed", "units")
	system := oneOf(values, "units", []string{"si", "us"}, &faults)
	trials, _ := trialsOf(values, &faults)
	if refusedQuery(c, &faults) {
		return
	}
	data, err := body(c)
	if err != nil {
		refuseError(c, err)
		return
	}
	r, err := compare.Work(c.Request.Context(), s.reader, s.catalogue, data, trials)
	if err != nil {
		refuseError(c, err)
		return
	}
	respondComparison(c, r, form, system)
}

func respondComparison(c *gin.Context, r *compare.Result, form, system string) {
	switch form {
	case "text/csv":
		text, err := report.ComparisonCSV(r)
		if err != nil {
			refuseError(c, err)
			return
		}
		send(c, http.StatusOK, "text/csv; charset=utf-8; header=present", text)
	case "text/plain":
		shown, err := units.ParseSystem(system)
		if err != nil {
			refuseError(c, err)
			return
		}
		send(c, http.StatusOK, "text/plain; charset=utf-8", []byte(report.Comparison(r, shown)))
	default:
		respond(c, r)
	}
}
