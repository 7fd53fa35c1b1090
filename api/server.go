// Package api is the HTTP face of filmbuild: it decodes, calls the engine and
// responds. gin is used here and nowhere else.
//
//	@title			filmbuild
//	@version		1
//	@description	Works out what it takes to strip a large static machine to bare metal and repaint it: areas, litres, kilograms, tape, hours, waste, cautions, an order in whole packs and a budget, with the working behind every figure. Numbers are SI with the unit as suffix of the name; any number of an input may be text with its own unit ("0.8 mil") or a range {"low", "likely", "high"}. Money is decimal text in the job's currency.
package api

import (
	"log/slog"
	"net/http"
	"runtime/debug"
	"time"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate"
	"filmbuild/products"
)

// Server answers requests from a catalogue that does not change.
type Server struct {
	catalogue *products.Catalogue
	reader    *estimate.Reader
}

// Handler returns the handler of every route.
func Handler(catalogue *products.Catalogue) http.Handler {
	gin.SetMode(gin.ReleaseMode)
	s := &Server{catalogue: catalogue, reader: estimate.NewReader()}
	r := gin.New()
	r.HandleMethodNotAllowed = true
	_ = r.SetTrustedProxies(nil) // nil cannot be malformed
	r.Use(logged, recovered, guarded)
	r.NoRoute(func(c *gin.Context) {
		refuse(c, http.StatusNotFound, "there is nothing at "+c.Request.URL.Path+"; see /docs")
	})
	r.NoMethod(func(c *gin.Context) {
		refuse(c, http.StatusMethodNotAllowed, c.Request.Method+" is not known at "+c.Request.URL.Path+"; see /docs")
	})
	s.routes(r)
	return r
}

func (s *Server) routes(r *gin.Engine) {
	r.POST("/v1/estimates", s.estimates)
	for _, name := range calculatorNames() {
		r.POST("/v1/calculations/"+name, s.calculation(name))
		r.GET("/v1/calculations/"+name, s.calculation(name))
	}
	r.GET("/v1/shapes", s.shapes)
	r.GET("/v1/markings", s.markings)
	r.GET("/v1/products", s.products)
	r.GET("/v1/media", s.media)
	r.GET("/v1/methods", s.methods)
	r.GET("/v1/sources", s.sources)
	r.GET("/v1/formulas", s.formulas)
	r.GET("/v1/examples", s.examples)
	r.GET("/v1/examples/:id", s.example)
	r.GET("/healthz", s.health)
	r.GET("/readyz", s.ready)
	s.pages(r)
}

// recovered turns a panic into a problem; the stack goes to the log only.
func recovered(c *gin.Context) {
	defer func() {
		if cause := recover(); cause != nil {
			slog.Error("panic", "path", c.Request.URL.Path, "cause", cause, "stack", string(debug.Stack()))
			if !c.Writer.Written() {
				refuse(c, http.StatusInternalServerError, "something went wrong on our side; the input may be right")
			}
		}
	}()
	c.Next()
}

func logged(c *gin.Context) {
	start := time.Now()
	c.Next()
	slog.Info("request", "method", c.Request.Method, "path", c.Request.URL.Path, "status", c.Writer.Status(), "bytes", c.Writer.Size(), "took", time.Since(start))
}

// guarded sets the headers that keep a browser from doing more than the page
// needs: everything comes from this host.
func guarded(c *gin.Context) {
	h := c.Writer.Header()
	h.Set("Content-Security-Policy", "default-src 'self'; img-src 'self' data: blob:; style-src 'self'; script-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	c.Next()
}
