package api

import (
	"github.com/gin-gonic/gin"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/target"
)

// solutions finds the largest area or the thickest film plan that a budget or a
// stock covers.
//
//	@Summary		What a budget or a stock covers
//	@Description	A job and a target go in: a budget, a stock of products, or both. Out comes the largest area, or the thickest film plan, that still fits, with its whole estimate; one part in 10^9 more does not fit. Nothing is stored.
//	@Tags			estimates
//	@Accept			json
//	@Produce		json
//	@Param			question	body		target.Question	true	"the job and the target"
//	@Success		200			{object}	target.Answer
//	@Failure		400			{object}	Problem
//	@Failure		406			{object}	Problem
//	@Failure		413			{object}	Problem
//	@Failure		415			{object}	Problem
//	@Failure		422			{object}	Problem
//	@Failure		500			{object}	Problem
//	@Router			/v1/solutions [post]
func (s *Server) solutions(c *gin.Context) {
	if accepts(c, "", "application/json") == "" {
		return
	}
	values, ok := parameters(c)
	if !ok {
		return
	}
	var faults fault.List
	if onlyKnown(values, &faults); refusedQuery(c, &faults) {
		return
	}
	data, err := body(c)
	if err != nil {
		refuseError(c, err)
		return
	}
	a, err := target.Solve(c.Request.Context(), s.reader, s.catalogue, data)
	if err != nil {
		refuseError(c, err)
		return
	}
	respond(c, a)
}
