package main

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
)

// server is the real program, running.
type server struct {
	address string // http://127.0.0.1:PORT/
	stop    func() said
}

var addressLine = regexp.MustCompile(`^plait: (http://127\.0\.0\.1:\d+/)\n$`)

func start(t *testing.T, args ...string) server {
	t.Helper()
	ctx, cancel := context.WithCancel(context.WithoutCancel(t.Context()))
	reader, writer := io.Pipe()
	var errs bytes.Buffer
	p := program{args: args, stdout: writer, stderr: &errs}
	ended := make(chan int, 1)
	go func() {
		ended <- p.run(ctx)
		_ = writer.Close() // a pipe in memory; its Close gives no error
	}()
	lines := bufio.NewReader(reader)
	line, err := lines.ReadString('\n')
	address := addressLine.FindStringSubmatch(line)
	if address == nil {
		cancel()
		t.Fatalf("the first line is %q (%v), want the address; errors %q, exit %d", line, err, errs.String(), <-ended)
	}
	stop := sync.OnceValue(func() said {
		cancel()
		rest, _ := io.ReadAll(lines) // ends with the program
		return said{string(rest), errs.String(), <-ended}
	})
	t.Cleanup(func() { stop() })
	return server{address[1], stop}
}

func (s server) wantStopped(t *testing.T) {
	t.Helper()
	if got := s.stop(); got != (said{}) {
		t.Errorf("at the end the program said %+v, want nothing more and exit 0", got)
	}
}

func get(t *testing.T, address string) (page string, from *url.URL) {
	t.Helper()
	request, err := http.NewRequestWithContext(t.Context(), http.MethodGet, address, nil)
	if err != nil {
		t.Fatal(err)
	}
	return send(t, request)
}

func post(t *testing.T, address string, form url.Values) (page string, from *url.URL) {
	t.Helper()
	request, err := http.NewRequestWithContext(t.Context(), http.MethodPost, address, strings.NewReader(form.Encode()))
	if err != nil {
		t.Fatal(err)
	}
	request.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	return send(t, request)
}

func send(t *testing.T, request *http.Request) (page string, from *url.URL) {
	t.Helper()
	response, err := http.DefaultClient.Do(request)
	if err != nil {
		t.Fatal(err)
	}
	data, err := io.ReadAll(response.Body)
	if err != nil {
		t.Fatal(err)
	}
	if err := response.Body.Close(); err != nil {
		t.Fatal(err)
	}
	if response.StatusCode != http.StatusOK {
		t.Errorf("%s %s: %s", request.Method, request.URL, response.Status)
	}
	return string(data), response.Request.URL
}

func TestDemoShowsAFinishedPlan(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	demo := start(t, "demo")
	page, from := get(t, demo.address)
	if !strings.HasSuffix(from.Path, "/plan") {
		t.Errorf("the demonstration opens at %s, want a plan", from)
	}
	for _, want := range []string{"Pasty, gnocchi and choux", "Clean down", "<svg"} {
		if !strings.Contains(page, want) {
			t.Errorf("the first page does not show %q", want)
		}
	}
	class, _ := get(t, demo.address+"class")
	if !strings.Contains(class, "Amara") {
		t.Error("the class is not there")
	}
	demo.wantStopped(t)
	left, err := filepath.Glob(filepath.Join(os.TempDir(), "plait-demo-*"))
	if err != nil || len(left) != 0 {
		t.Errorf("the demonstration left %v (%v)", left, err)
	}
}

// A link of the pages themselves still leads to the list.
func TestDemoListIsThere(t *testing.T) {
	pages := planFirst(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(http.StatusTeapot) }), "x")
	for site, want := range map[string]int{"same-origin": http.StatusTeapot, "none": http.StatusSeeOther, "": http.StatusSeeOther} {
		request, err := http.NewRequestWithContext(t.Context(), http.MethodGet, "/", nil)
		if err != nil {
			t.Fatal(err)
		}
		request.Header.Set("Sec-Fetch-Site", site)
		got := recorder{header: http.Header{}}
		pages.ServeHTTP(&got, request)
		if got.code != want {
			t.Errorf("from %q: %d, want %d", site, got.code, want)
		}
	}
}

type recorder struct {
	header http.Header
	code   int
}

func (r *recorder) Header() http.Header         { return r.header }
func (r *recorder) Write(b []byte) (int, error) { return len(b), nil }
func (r *recorder) WriteHeader(code int)        { r.code = code }

func TestServeKeepsWhatWasMade(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "kept")
	first := start(t, "serve", "--data", folder, "--listen", "127.0.0.1:0")
	_, from := post(t, first.address+"practicals", url.Values{"start": {"two-in-two"}})
	if !strings.HasPrefix(from.Path, "/practical/") {
		t.Fatalf("a new practical led to %s", from)
	}
	first.wantStopped(t)
	second := start(t, "serve", "--data", folder, "--listen", "127.0.0.1:0")
	if list, _ := get(t, second.address); !strings.Contains(list, from.Path) {
		t.Errorf("the list after a new start does not lead to %s", from.Path)
	}
	second.wantStopped(t)
}

func TestServeRefuses(t *testing.T) {
	folder := t.TempDir()
	running := start(t, "serve", "--data", folder, "--listen", "127.0.0.1:0")
	taken := strings.TrimSuffix(strings.TrimPrefix(running.address, "http://"), "/")
	for _, tt := range []struct {
		name string
		args []string
		want string
	}{
		{"SameFolder", []string{"serve", "--data", folder, "--listen", "127.0.0.1:0"}, "another plait is using this folder"},
		{"SamePort", []string{"serve", "--data", t.TempDir(), "--listen", taken}, "choose another port"},
		{"OtherMachines", []string{"serve", "--data", t.TempDir(), "--listen", "0.0.0.0:0"}, "this machine only"},
		{"Name", []string{"demo", "--listen", "example.org:80"}, "this machine only"},
		{"NoPort", []string{"demo", "--listen", "127.0.0.1"}, "write it like 127.0.0.1:8187"},
		{"NoFolder", []string{"serve"}, "--data"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got := run(t, tt.args...)
			if got.code != exitFailure || !strings.Contains(got.err, tt.want) || got.out != "" && tt.name != "NoFolder" {
				t.Errorf("got %+v, want exit 2 and %q", got, tt.want)
			}
		})
	}
	running.wantStopped(t)
}
