package command

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"

	"filmbuild/api"
	"filmbuild/products"
)

// serve answers requests until it is told to stop; what is under way then gets
// time to finish.
func serve(args []string, s streams) int {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	address := flags.String("addr", "127.0.0.1:8080", "host:port to listen on")
	if code, ok := parse(flags, args, 0, s); !ok {
		return code
	}
	catalogue, err := products.Load()
	if err != nil {
		return broken(err, s)
	}
	listener, err := net.Listen("tcp", *address)
	if err != nil {
		fmt.Fprintln(s.err, err)
		return lineFault
	}
	slog.SetDefault(slog.New(slog.NewTextHandler(s.err, nil)))
	server := &http.Server{Handler: api.Handler(catalogue), ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 30 * time.Second, WriteTimeout: 60 * time.Second, IdleTimeout: 2 * time.Minute}
	fmt.Fprintf(s.out, "filmbuild: open http://%s/ in a browser; Ctrl+C ends it\n", listener.Addr())
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	go func() {
		<-ctx.Done()
		patience, cancel := context.WithTimeout(context.Background(), 10*time.Second)
		defer cancel()
		_ = server.Shutdown(patience) // what does not finish in time is cut off
	}()
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return broken(err, s)
	}
	return done
}
