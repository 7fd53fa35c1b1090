// Command load compares the requests per second of POST /v1/estimates, with
// example (a), with those of a bare gin handler that decodes the same document
// into plain structs and encodes the same estimate. Rounds alternate, so that a
// slow moment of the machine meets both; the ratio of the medians is printed,
// and the exit code is 1 when it is below the target.
//
// Example (a) holds numbers with a range, so that the API answers it with ten
// thousand trials, which the bare handler does not make. With -ranged=false both
// get the same document with the likely values alone.
//
//	go run ./tests/load [-rounds 7] [-requests 600] [-clients 4] [-ranged=false]
package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"os"
	"slices"
	"sync"
	"sync/atomic"
	"syscall"
	"time"

	"github.com/gin-gonic/gin"

	"filmbuild/api"
	"filmbuild/estimate"
	"filmbuild/estimate/example"
	"filmbuild/products"
	"filmbuild/tests/load/plain"
)

// target is the least share of the bare handler's rate that the API must reach.
const target = 0.5

func main() {
	rounds := flag.Int("rounds", 7, "rounds of each")
	requests := flag.Int("requests", 600, "requests of one round")
	clients := flag.Int("clients", 4, "requests under way at once")
	ranged := flag.Bool("ranged", true, "keep the ranges of the document")
	flag.Parse()
	ratio, err := compare(*rounds, *requests, *clients, *ranged)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
	if ratio < target {
		os.Exit(1)
	}
}

// compare drives both handlers in turn and prints the medians and their ratio.
func compare(rounds, requests, clients int, ranged bool) (float64, error) {
	slog.SetDefault(slog.New(slog.NewTextHandler(io.Discard, nil))) // the log is written, as in service, and thrown away
	job, err := example.Find("jet-trainer")
	if err != nil {
		return 0, err
	}
	document := []byte(job.Job)
	if !ranged {
		if document, err = likely(document); err != nil {
			return 0, err
		}
	}
	catalogue, err := products.Load()
	if err != nil {
		return 0, err
	}
	answer, err := estimate.NewReader(nil).Estimate(document, catalogue)
	if err != nil {
		return 0, err
	}
	servers := []*server{{name: "POST /v1/estimates", handler: api.Handler(catalogue)}, {name: "bare handler", handler: bare(answer)}}
	for _, s := range servers {
		stop, err := s.start()
		if err != nil {
			return 0, err
		}
		defer stop()
		if _, err := s.round(document, requests/4+1, clients); err != nil { // warm up
			return 0, err
		}
	}
	for range rounds {
		for _, s := range servers {
			before := processorTime()
			rate, err := s.round(document, requests, clients)
			if err != nil {
				return 0, err
			}
			s.rates = append(s.rates, rate)
			s.costs = append(s.costs, 1000*(processorTime()-before).Seconds()/float64(requests))
		}
	}
	for _, s := range servers {
		fmt.Printf("%-20s %7.0f requests/s (median of %d rounds; %.0f to %.0f), %.3f ms of processor each\n", s.name, median(s.rates), rounds, slices.Min(s.rates), slices.Max(s.rates), median(s.costs))
	}
	ratio := median(servers[0].rates) / median(servers[1].rates)
	fmt.Printf("ratio %.2f, target at least %.2f; by processor time, which other work on the machine disturbs less, %.2f\n", ratio, target, median(servers[1].costs)/median(servers[0].costs))
	return ratio, nil
}

// bare decodes the document and encodes the estimate, and does nothing else.
func bare(answer *estimate.Estimate) http.Handler {
	gin.SetMode(gin.ReleaseMode)
	r := gin.New()
	r.POST("/v1/estimates", func(c *gin.Context) {
		data, err := io.ReadAll(c.Request.Body)
		if err != nil {
			c.Status(http.StatusBadRequest)
			return
		}
		var job plain.Job
		if err := json.Unmarshal(data, &job); err != nil {
			c.Status(http.StatusBadRequest)
			return
		}
		text, err := json.Marshal(answer)
		if err != nil {
			c.Status(http.StatusInternalServerError)
			return
		}
		c.Data(http.StatusOK, "application/json", text)
	})
	return r
}

type server struct {
	name    string
	handler http.Handler
	url     string
	rates   []float64 // requests per second, by round
	costs   []float64 // processor time of one request in ms, client and all, by round
}

// start listens on a free port of the loopback address.
func (s *server) start() (stop func(), err error) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	s.url = "http://" + listener.Addr().String() + "/v1/estimates"
	served := &http.Server{Handler: s.handler, ReadHeaderTimeout: 5 * time.Second}
	go func() { _ = served.Serve(listener) }() // ends with Close
	return func() { _ = served.Close() }, nil
}

// round sends requests from several clients at once and returns how many were
// answered in a second.
func (s *server) round(body []byte, requests, clients int) (float64, error) {
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: clients}, Timeout: 30 * time.Second}
	defer client.CloseIdleConnections()
	var left atomic.Int64
	left.Store(int64(requests))
	faults := make([]error, clients)
	var group sync.WaitGroup
	begun := time.Now()
	for k := range clients {
		group.Go(func() {
			for left.Add(-1) >= 0 && faults[k] == nil {
				faults[k] = post(client, s.url, body)
			}
		})
	}
	group.Wait()
	return float64(requests) / time.Since(begun).Seconds(), errors.Join(faults...)
}

func post(client *http.Client, url string, body []byte) error {
	request, err := http.NewRequestWithContext(context.Background(), http.MethodPost, url, bytes.NewReader(body))
	if err != nil {
		return err
	}
	request.Header.Set("Content-Type", "application/json")
	answer, err := client.Do(request)
	if err != nil {
		return err
	}
	size, err := io.Copy(io.Discard, answer.Body)
	if err := errors.Join(err, answer.Body.Close()); err != nil {
		return err
	}
	if answer.StatusCode != http.StatusOK || size == 0 {
		return fmt.Errorf("%s answered %d with %d bytes", url, answer.StatusCode, size)
	}
	return nil
}

// processorTime is what this process has used so far, 0 where the system does
// not tell.
func processorTime() time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		return 0
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

func median(rates []float64) float64 {
	sorted := slices.Sorted(slices.Values(rates))
	return (sorted[len(sorted)/2] + sorted[(len(sorted)-1)/2]) / 2
}
