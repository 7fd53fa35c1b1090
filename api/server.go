// Package api is the HTTP face of filmbuild: it decodes, calls the engine and
// responds. gin is used here and nowhere else.
//
//	@title						filmbuild
//	@version					1
//	@description				Works out what it takes to strip a large static machine to bare metal and repaint it: areas, litres, kilograms, tape, hours, waste, cautions, an order in whole packs and a budget, with the working behind every figure.
//	@description
//	@description				Numbers are SI, with the unit as suffix of the name. Any number of an input may also be text with its own unit ("0.8 mil"), where its name has a unit, or a range {"low", "likely", "high"}. Money is decimal text in the job's currency. An input with a member that is not known here is refused.
//	@description
//	@description				Errors are problem documents (RFC 9457) that list every fault of the input at once, each with a JSON pointer and a stable code.
//	@tag.name					estimates
//	@tag.description			A whole job in, the whole answer out.
//	@tag.name					take-offs
//	@tag.description			Tables that people fill in, in and out.
//	@tag.name					calculations
//	@tag.description			One question each. POST takes a JSON body; GET takes the same fields as query parameters, so that a spreadsheet can ask, and field asks for one value as bare text.
//	@tag.name					meshes
//	@tag.description			A scan or a drawing in, its area out.
//	@tag.name					catalogue
//	@tag.description			What can be named in a job, every value with its source.
//	@tag.name					operations
//	@tag.description			For whoever runs the service.
package api

import (
	"log/slog"
	"net/http"
	"runtime/debug"
	"time"

	"github.com/gin-gonic/gin"

	"filmbuild/api/web"
	"filmbuild/estimate"
	"filmbuild/estimate/calculate"
	"filmbuild/openapi"
	"filmbuild/products"
)

// Server answers requests from a catalogue that does not change, and keeps
// meshes that are sent to it for a while.
type Server struct {
	catalogue   *products.Catalogue
	reader      *estimate.Reader
	uploads     *uploads
	description web.File
	engine      *gin.Engine
}

// Handler returns the handler of every route.
func Handler(catalogue *products.Catalogue) *Server {
	gin.SetMode(gin.ReleaseMode)
	kept := newUploads()
	s := &Server{catalogue: catalogue, reader: estimate.NewReader(kept.measure), uploads: kept, engine: gin.New(),
		description: web.NewFile("application/json", openapi.Document())}
	r := s.engine
	r.HandleMethodNotAllowed = true
	r.RedirectTrailingSlash = false // a path that is nearly right is told to be wrong
	_ = r.SetTrustedProxies(nil)    // nil cannot be malformed
	r.Use(logged, recovered, guarded)
	r.NoRoute(func(c *gin.Context) {
		refuse(c, http.StatusNotFound, "there is nothing at "+c.Request.URL.Path+"; see /docs")
	})
	r.NoMethod(func(c *gin.Context) {
		refuse(c, http.StatusMethodNotAllowed, c.Request.Method+" is not known at "+c.Request.URL.Path+"; it takes "+c.Writer.Header().Get("Allow"))
	})
	s.routes(r)
	return s
}

// ServeHTTP answers one request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.engine.ServeHTTP(w, r) }

// Route is a method and the path that it is known at, as gin writes it.
type Route struct{ Method, Path string }

// Routes lists every route.
func (s *Server) Routes() []Route {
	var list []Route
	for _, r := range s.engine.Routes() {
		list = append(list, Route{Method: r.Method, Path: r.Path})
	}
	return list
}

func (s *Server) routes(r *gin.Engine) {
	r.POST("/v1/estimates", s.estimates)
	r.POST("/v1/sheets", s.sheets)
	r.POST("/v1/comparisons", s.comparisons)
	r.POST("/v1/takeoffs", s.takeoffs)
	r.POST("/v1/tables", s.tables)
	get(r, "/v1/templates", s.templates)
	get(r, "/v1/templates/:name", s.template)
	r.POST("/v1/solutions", s.solutions)
	for _, calculator := range calculate.All() {
		r.POST("/v1/calculations/"+calculator.Name, s.calculation(calculator))
		get(r, "/v1/calculations/"+calculator.Name, s.calculation(calculator))
	}
	r.POST("/v1/meshes", s.meshes)
	get(r, "/v1/shapes", s.shapes)
	get(r, "/v1/shapes/:kind/sketch", s.sketch)
	get(r, "/v1/markings", s.markings)
	get(r, "/v1/markings/:kind/sheet", s.markingSheet)
	get(r, "/v1/products", s.products)
	get(r, "/v1/media", s.media)
	get(r, "/v1/methods", s.methods)
	get(r, "/v1/sources", s.sources)
	get(r, "/v1/formulas", s.formulas)
	get(r, "/v1/examples", s.examples)
	get(r, "/v1/examples/:id", s.example)
	get(r, "/v1/examples/:id/estimate", s.exampleEstimate)
	get(r, "/v1/examples/:id/estimate.csv", s.exampleTable)
	get(r, "/openapi.json", s.describe)
	get(r, "/healthz", s.health)
	get(r, "/readyz", s.ready)
	s.pages(r)
}

// get registers a handler for GET and for HEAD, whose body net/http leaves out.
func get(r *gin.Engine, path string, handler gin.HandlerFunc) {
	r.GET(path, handler)
	r.HEAD(path, handler)
}

// recovered turns a panic into a problem; the stack goes to the log only.
func recovered(c *gin.Context) {
	defer func() {
		switch cause := recover(); {
		case cause == nil:
		case cause == http.ErrAbortHandler:
			panic(cause) // how a handler tells net/http to hang up
		case c.Writer.Written():
			slog.Error("panic", "path", c.Request.URL.Path, "cause", cause, "stack", string(debug.Stack()))
			panic(http.ErrAbortHandler) // half an answer must not look like a whole one
		default:
			fail(c, "panic", "cause", cause, "stack", string(debug.Stack()))
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
