package browser

import (
	"log/slog"
	"os"
	"testing"
)

// TestMain keeps the server's log of requests out of the tests' own words.
func TestMain(m *testing.M) {
	slog.SetDefault(slog.New(slog.DiscardHandler))
	os.Exit(m.Run())
}
