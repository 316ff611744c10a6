package main

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"os"

	"plait.example/examples"
	"plait.example/internal/app"
)

type demoCommand struct {
	Listen string `default:"127.0.0.1:0" help:"Address on this machine; port 0 takes a free one." placeholder:"127.0.0.1:PORT"`
}

// demoFile is the menu of the demonstration.
const demoFile = "three-in-three.yaml"

func (c *demoCommand) run(ctx context.Context, p *program, a *app.App) (_ int, err error) {
	folder, err := os.MkdirTemp("", "plait-demo-")
	if err != nil {
		return 0, fmt.Errorf("make a folder for the demonstration: %w", err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	return exitFits, p.serve(ctx, a, folder, c.Listen, func(ctx context.Context, pages http.Handler) (http.Handler, error) {
		shown := p.progress()
		defer shown.end()
		r, err := a.Demo(ctx, examples.Files, demoFile, app.PlanOptions{Seed: usualSeed, Improved: shown.improved})
		return planFirst(pages, r.ID), err
	})
}

// planFirst opens the finished plan for whoever comes to the root from outside.
// Links of the pages themselves still lead to the list that stands there.
func planFirst(pages http.Handler, id string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method == http.MethodGet && r.URL.Path == "/" && r.Header.Get("Sec-Fetch-Site") != "same-origin" {
			http.Redirect(w, r, "/practical/"+id+"/plan", http.StatusSeeOther)
			return
		}
		pages.ServeHTTP(w, r)
	})
}
