package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"time"

	"plait.example/internal/app"
	"plait.example/internal/store"
	"plait.example/internal/web"
)

type serveCommand struct {
	Data   string `required:"" help:"Folder where everything is kept; made when it is not there." placeholder:"DIR"`
	Listen string `default:"127.0.0.1:8187" help:"Address on this machine; port 0 takes a free one." placeholder:"127.0.0.1:PORT"`
}

func (c *serveCommand) run(ctx context.Context, p *program, a *app.App) (int, error) {
	return exitFits, p.serve(ctx, a, c.Data, c.Listen, nil)
}

// front changes what stands in front of the pages; it may fill the store first.
type front func(ctx context.Context, pages http.Handler) (http.Handler, error)

// usualSeed makes a plan of the same practical the same plan every time.
const usualSeed = 1

// serve opens the folder and answers until ctx ends.
func (p *program) serve(ctx context.Context, a *app.App, folder, listen string, before front) (err error) {
	listener, err := listenHere(ctx, listen)
	if err != nil {
		return err
	}
	kept, err := store.Open(ctx, folder)
	if err != nil {
		return errors.Join(err, listener.Close())
	}
	defer func() { err = errors.Join(err, kept.Close()) }()
	a.Store = kept
	pages := web.New(a, web.Options{Log: a.Log, Plan: app.PlanOptions{Seed: usualSeed}})
	defer pages.Close()
	var handler http.Handler = pages
	if before != nil {
		if handler, err = before(ctx, pages); err != nil {
			return errors.Join(err, listener.Close())
		}
	}
	fmt.Fprintf(p.stdout, "plait: http://%s/\n", listener.Addr())
	return answer(ctx, a.Log, listener, handler)
}

// listenHere refuses addresses that other machines could reach: there is no
// sign-in, and names of children are kept.
func listenHere(ctx context.Context, address string) (net.Listener, error) {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return nil, fmt.Errorf("--listen %s: %w; write it like 127.0.0.1:8187", address, err)
	}
	if ip := net.ParseIP(host); ip == nil || !ip.IsLoopback() {
		return nil, fmt.Errorf("--listen %s: plait has no sign-in, so it answers on this machine only; write 127.0.0.1 and a port", address)
	}
	listener, err := new(net.ListenConfig).Listen(ctx, "tcp", address)
	if err != nil {
		return nil, fmt.Errorf("--listen %s: %w; choose another port, or 0 for a free one", address, err)
	}
	return listener, nil
}

// grace is how long requests under way may take to end.
const grace = 3 * time.Second

func answer(ctx context.Context, log *slog.Logger, listener net.Listener, pages http.Handler) error {
	base, cut := context.WithCancel(context.WithoutCancel(ctx))
	defer cut()
	server := &http.Server{
		Handler: pages, ReadHeaderTimeout: 10 * time.Second,
		BaseContext: func(net.Listener) context.Context { return base },
		ErrorLog:    slog.NewLogLogger(log.Handler(), slog.LevelWarn),
	}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	select {
	case err := <-failed:
		return fmt.Errorf("serve: %w", err)
	case <-ctx.Done():
	}
	log.Info("stopping")
	last, done := context.WithTimeout(base, grace)
	defer done()
	if err := server.Shutdown(last); err != nil {
		cut() // searches and streams that are still going
		return server.Close()
	}
	return nil
}
