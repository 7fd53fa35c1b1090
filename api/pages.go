package api

import (
	"net/http"

	"github.com/gin-gonic/gin"

	"filmbuild/api/web"
	"filmbuild/openapi"
)

// pages serves the page, its files, the API description and its reader.
func (s *Server) pages(r *gin.Engine) {
	for path, file := range web.Files() {
		r.GET(path, static(file))
		r.HEAD(path, static(file))
	}
	r.GET("/openapi.json", static(web.File{Kind: "application/json", Data: openapi.Document(), Tag: web.Tag(openapi.Document())}))
}

// static answers a file that is part of the program.
func static(file web.File) gin.HandlerFunc {
	return func(c *gin.Context) {
		c.Header("ETag", file.Tag)
		c.Header("Cache-Control", "no-cache")
		if c.GetHeader("If-None-Match") == file.Tag {
			c.Status(http.StatusNotModified)
			return
		}
		c.Data(http.StatusOK, file.Kind, file.Data)
	}
}
