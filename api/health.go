package api

import "github.com/gin-gonic/gin"

// Health says how the service is.
type Health struct {
	Status string `json:"status"`
}

// health answers as long as the process serves at all.
//
//	@Summary	The process serves
//	@Tags		operations
//	@Produce	json
//	@Success	200	{object}	Health
//	@Router		/healthz [get]
func (s *Server) health(c *gin.Context) { respond(c, Health{Status: "ok"}) }

// Readiness says what the service answers from.
type Readiness struct {
	Status           string `json:"status"`
	CatalogueVersion string `json:"catalogue_version"`
}

// ready answers once the catalogue is loaded, which is before the first
// request.
//
//	@Summary	The service can answer
//	@Tags		operations
//	@Produce	json
//	@Success	200	{object}	Readiness
//	@Router		/readyz [get]
func (s *Server) ready(c *gin.Context) {
	respond(c, Readiness{Status: "ok", CatalogueVersion: s.catalogue.Version()})
}
