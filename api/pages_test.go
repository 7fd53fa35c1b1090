package api

import (
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/products"
)

// Content codings are weighed as in RFC 9110 section 12.5.3.
func TestWhoTakesGzip(t *testing.T) {
	for header, want := range map[string]bool{
		"": false, "gzip": true, "GZIP": true, "br, gzip;q=0.5": true, "gzip;q=0": false, "*": true, "*;q=0": false,
		"gzip;q=0, *": false, "*, gzip;q=0": false, "identity": false, "x-gzip": true,
	} {
		assert.Equal(t, want, packs(header), header)
	}
}

func TestFilesComePackedToWhoTakesThem(t *testing.T) {
	catalogue, err := products.Load()
	require.NoError(t, err)
	handler := Handler(catalogue)
	for _, path := range []string{"/", "/docs", "/openapi.json"} {
		ask := func(encoding string) *http.Response {
			request := httptest.NewRequest(http.MethodGet, path, nil)
			request.Header.Set("Accept-Encoding", encoding)
			answer := httptest.NewRecorder()
			handler.ServeHTTP(answer, request)
			return answer.Result()
		}
		plain, packed := ask("identity"), ask("gzip")
		want, err := io.ReadAll(plain.Body)
		require.NoError(t, err)
		assert.Empty(t, plain.Header.Get("Content-Encoding"))
		assert.Equal(t, "gzip", packed.Header.Get("Content-Encoding"))
		assert.Contains(t, packed.Header.Values("Vary"), "Accept-Encoding")
		reader, err := gzip.NewReader(packed.Body)
		require.NoError(t, err)
		got, err := io.ReadAll(reader)
		require.NoError(t, err)
		assert.Equal(t, want, got, path)
	}
}
