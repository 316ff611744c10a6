package web

import (
	"errors"
	"fmt"
	"io"
	"log/slog"
	"mime"
	"net/http"
	"net/url"
	"runtime/debug"
	"strings"
	"time"

	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// The most bytes that one request may carry: a pasted cookery book fits, and a
// file with pictures in it.
const (
	largest     = 4 << 20
	largestFile = app.MostFile + 1<<20
	largestBag  = 65 << 20 // the plans of a class in one archive
)

// policy lets a page load from this server and nowhere else: no script or
// style written into the page, no frame around it, no form to elsewhere.
const policy = "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'"

// guard wraps the pages: headers, limits, refusal of other sites' posts, and a
// page instead of a panic.
func (s *Server) guard(next http.Handler) http.Handler {
	crossing := http.NewCrossOriginProtection()
	crossing.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.fail(w, r, practical.Fault{
			Code: practical.Invalid, Message: "this form was sent from another site",
			Hint: "open the page here and send it again",
		})
	}))
	return s.tell(s.headers(s.limit(s.recover(crossing.Handler(next)))))
}

// tell logs each request, for those who run with --verbose.
func (s *Server) tell(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		began := time.Now()
		seen := &watched{ResponseWriter: w, status: http.StatusOK}
		next.ServeHTTP(seen, r)
		s.log.LogAttrs(r.Context(), slog.LevelDebug, "request", slog.String("method", r.Method), slog.String("path", r.URL.Path),
			slog.Int("status", seen.status), slog.Duration("took", time.Since(began)))
	})
}

// watched remembers the status that was written.
type watched struct {
	http.ResponseWriter
	status int
}

func (w *watched) WriteHeader(status int) {
	w.status = status
	w.ResponseWriter.WriteHeader(status)
}

// Unwrap lets a page flush and set deadlines.
func (w *watched) Unwrap() http.ResponseWriter { return w.ResponseWriter }

func (s *Server) headers(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Permissions-Policy", "camera=(), microphone=(), geolocation=()")
		if !strings.HasPrefix(r.URL.Path, "/assets/") {
			h.Set("Cache-Control", "no-store")
		}
		next.ServeHTTP(w, r)
	})
}

// limit reads the form of a post at once, so that a page need not ask whether
// it could be read, and so that what was typed is at hand when anything fails.
func (s *Server) limit(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method == http.MethodGet || r.Method == http.MethodHead {
			next.ServeHTTP(w, r)
			return
		}
		most := int64(largest)
		kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
		if kind == "multipart/form-data" {
			most = largestFile
			if strings.HasSuffix(r.URL.Path, "/plans") {
				most = largestBag
			}
		}
		r.Body = http.MaxBytesReader(w, r.Body, most)
		err := r.ParseForm()
		if err == nil && kind == "multipart/form-data" {
			err = r.ParseMultipartForm(largest)
		}
		var over *http.MaxBytesError
		switch {
		case errors.As(err, &over):
			w.Header().Set("Connection", "close")
			_, _ = io.CopyN(io.Discard, r.Body, most)
			s.fail(w, r, practical.Fault{
				Code: practical.TooLarge, Message: "that is more than this page can take at once",
				Hint: fmt.Sprintf("send at most %d MB at once, in parts if it is more", most>>20),
			})
		case err != nil:
			s.fail(w, r, practical.Fault{Code: practical.Invalid, Message: "the form could not be read", Hint: "go back and send it again"})
		default:
			next.ServeHTTP(w, r)
		}
	})
}

// recover answers a panic with a page that holds what was typed.
func (s *Server) recover(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			broken := recover()
			if broken == nil {
				return
			}
			if broken == http.ErrAbortHandler {
				panic(broken)
			}
			s.log.LogAttrs(r.Context(), slog.LevelError, "page broke",
				slog.String("method", r.Method), slog.String("path", r.URL.Path),
				slog.Any("panic", broken), slog.String("stack", string(debug.Stack())))
			s.fail(w, r, practical.Fault{Code: practical.Internal})
		}()
		next.ServeHTTP(w, r)
	})
}

// typed is what a form carried that a person wrote, in order, for a page that
// must give it back.
func typed(form url.Values) []Typed {
	var all []Typed
	for _, name := range ordered(form) {
		if name == "version" || name == "do" {
			continue
		}
		for _, text := range form[name] {
			if strings.TrimSpace(text) != "" && text != on && text != off {
				all = append(all, Typed{Name: label(name), Text: text})
			}
		}
	}
	return all
}

// label names a form's field without knowing the practical.
func label(name string) string {
	if w, known := words[pattern(name)]; known {
		return w.label
	}
	return capital(name)
}

// Typed is one thing that was typed, given back.
type Typed struct{ Name, Text string }
