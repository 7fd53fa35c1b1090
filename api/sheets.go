package api

import (
	"net/http"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/sheets"
	"filmbuild/surfaces/marking"
	"filmbuild/surfaces/sheet"
)

// sheets draws the markings of a job. It stores nothing.
//
//	@Summary		Draw a marking, or the places on a face
//	@Description	A job goes in; out comes a drawing at true scale, one user unit to 1 mm: of one marking (?marking=, with ?layer=cut its lines for a stencil cutter), or of a face with all markings at their places and the tapes to lay out (?component= and ?face=, for those that have a place). Faults of the query are told with pointers to its parameters.
//	@Tags			estimates
//	@Accept			json
//	@Produce		image/svg+xml
//	@Param			job			body		estimate.Job	true	"the job"
//	@Param			marking		query		string			false	"id of a marking"
//	@Param			component	query		string			false	"id of a component, or of a region"
//	@Param			face		query		string			false	"its face"
//	@Param			other_side	query		string			false	"true for the mirrored places of a face that is the same on both sides, as the upper one of a wing"	Enums(false, true)
//	@Param			layer		query		string			false	"of a marking: all, or the lines to cut"	Enums(all, cut)
//	@Param			units		query		string			false	"of the lengths on the sheet"	Enums(si, us)
//	@Param			date		query		string			false	"printed on the sheet as it is"
//	@Success		200			{string}	string
//	@Failure		400			{object}	Problem
//	@Failure		406			{object}	Problem
//	@Failure		413			{object}	Problem
//	@Failure		415			{object}	Problem
//	@Failure		422			{object}	Problem
//	@Failure		500			{object}	Problem
//	@Router			/v1/sheets [post]
func (s *Server) sheets(c *gin.Context) {
	if accepts(c, "", drawn) == "" {
		return
	}
	values, ok := parameters(c)
	if !ok {
		return
	}
	var faults fault.List
	onlyKnown(values, &faults, "marking", "component", "face", "other_side", "layer", "units", "date")
	wanted := sheets.Wanted{
		Marking: values.Get("marking"), Component: values.Get("component"), Face: values.Get("face"),
		OtherSide: oneOf(values, "other_side", []string{"false", "true"}, &faults) == "true",
		Layer:     oneOf(values, "layer", sheets.Layers(), &faults),
		Units:     oneOf(values, "units", []string{"si", "us"}, &faults), Date: values.Get("date"),
	}
	if refusedQuery(c, &faults) {
		return
	}
	data, err := body(c)
	if err != nil {
		refuseError(c, err)
		return
	}
	job, e, err := s.reader.Worked(data, s.catalogue)
	if err != nil {
		refuseError(c, err)
		return
	}
	picture, err := sheets.Draw(job, e, wanted, faults.At(""))
	if err == nil {
		err = faults.Err()
	}
	if err != nil {
		refuseError(c, err)
		return
	}
	send(c, http.StatusOK, drawn, picture)
}

// markingSheet draws the example of a kind of marking at true scale.
//
//	@Summary	The example of a kind of marking, at true scale
//	@Tags		catalogue
//	@Produce	image/svg+xml
//	@Param		kind	path		string	true	"kind of marking"
//	@Success	200		{string}	string
//	@Failure	400		{object}	Problem
//	@Failure	404		{object}	Problem
//	@Failure	406		{object}	Problem
//	@Failure	500		{object}	Problem
//	@Router		/v1/markings/{kind}/sheet [get]
func (s *Server) markingSheet(c *gin.Context) {
	if accepts(c, "", drawn) == "" || !bare(c) {
		return
	}
	for _, k := range marking.Kinds() {
		if k.Name != c.Param("kind") {
			continue
		}
		picture, err := sheet.Figure(k.Example, sheet.Look{})
		if err != nil {
			refuseError(c, err)
			return
		}
		send(c, http.StatusOK, drawn, picture)
		return
	}
	refuse(c, http.StatusNotFound, "there is no kind of marking "+c.Param("kind")+"; /v1/markings lists them")
}
