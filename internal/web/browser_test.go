package web

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// browser is one Chromium for all tests of the package, in a fresh profile.
var browser = struct {
	sync.Once
	ctx context.Context
	end func()
	err error
}{}

func TestMain(m *testing.M) {
	code := m.Run()
	if browser.end != nil {
		browser.end()
	}
	os.Exit(code)
}

func startBrowser() {
	path, err := exec.LookPath("chromium")
	if err != nil {
		browser.err = fmt.Errorf("the browser tests need Debian's chromium: %w", err)
		return
	}
	profile, err := os.MkdirTemp("", "plait-browser-")
	if err != nil {
		browser.err = err
		return
	}
	options := []chromedp.ExecAllocatorOption{
		chromedp.ExecPath(path), chromedp.UserDataDir(profile), chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU, chromedp.NoFirstRun,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
	}
	allocator, stop := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, cancel := chromedp.NewContext(allocator)
	browser.ctx = ctx
	browser.end = func() { cancel(); stop(); _ = os.RemoveAll(profile) }
	browser.err = chromedp.Do(ctx)
}

// The widths that people have.
const (
	phone  = 360
	laptop = 1366
)

// tab is a page of the application in the browser.
type tab struct {
	*site
	ctx      context.Context
	address  string
	messages *[]string // errors on the console
}

// newTab opens a tab on a fresh application. A missing browser fails the test.
func newTab(t *testing.T, width int64, script bool) *tab {
	t.Helper()
	return newSite(t).tab(width, script)
}

func (s *site) tab(width int64, script bool) *tab {
	s.Helper()
	browser.Do(startBrowser)
	if browser.err != nil {
		s.Fatal(browser.err)
	}
	server := httptest.NewServer(s.server)
	ctx, cancel := chromedp.NewContext(browser.ctx)
	ctx, late := context.WithTimeout(ctx, 5*time.Minute)
	b := &tab{s, ctx, server.URL, new([]string)}
	var listening sync.WaitGroup
	heard := make(chan struct{})
	b.do(chromedp.EmulateViewport(width, 800), chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		if _, err := cdp.Call(ctx, t, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true}); err != nil {
			return err
		}
		_, err := cdp.Call(ctx, t, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: !script})
		return err
	}))
	messages := chromedp.Console(ctx)
	listening.Go(func() {
		close(heard)
		for m, err := range messages {
			if err != nil {
				return
			}
			if string(m.Type) == "error" || string(m.Type) == "warning" || m.IsException() {
				*b.messages = append(*b.messages, m.String()+" "+m.URL)
			}
		}
	})
	<-heard
	s.Cleanup(func() {
		late()
		cancel()
		listening.Wait()
		server.CloseClientConnections()
		server.Close()
		for _, m := range *b.messages {
			if !strings.Contains(m, "status of 4") { // a 404 or 409 that the test asked for
				s.Errorf("console: %s", m)
			}
		}
	})
	return b
}

func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	for _, step := range steps {
		if err := chromedp.Do(b.ctx, step); err != nil {
			b.picture("failed-" + strings.ReplaceAll(b.Name(), "/", "-"))
			b.Fatal(err)
		}
	}
}

func (b *tab) open(path string) { b.Helper(); b.do(chromedp.Navigate(b.address + path)) }

// eval evaluates an expression.
func eval[T any](b *tab, expression string) T {
	b.Helper()
	value, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		b.Fatalf("%s: %v", expression, err)
	}
	return value
}

// focus puts the focus on what an expression names, and waits until it has it.
func (b *tab) focus(element string) {
	b.Helper()
	b.until(`(() => { const e = ` + element + `; e.focus(); return e === document.activeElement && document.hasFocus(); })()`)
}

// until waits for an expression to hold, on this page or the next one.
func (b *tab) until(expression string) {
	b.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, 2*time.Minute)
	defer cancel()
	poll := chromedp.Poll[bool](expression, chromedp.WithPollingTimeout(2*time.Minute), chromedp.WithPollingInterval(20*time.Millisecond))
	for {
		_, err := chromedp.Run(ctx, poll)
		if err == nil {
			return
		}
		if ctx.Err() != nil || errors.Is(err, chromedp.ErrPollingTimeout) {
			b.picture("failed-" + strings.ReplaceAll(b.Name(), "/", "-"))
			b.Fatalf("waiting for %s: %v; the page says: %s", expression, err, eval[string](b, `document.body.innerText.replaceAll("\n", " ").slice(0, 900)`))
		}
	}
}

// tallest is as much of a page as a picture shows, in pixels.
const tallest = 2600

// screens is where pictures of the pages are kept.
var screens = flag.String("screens", "", "keep pictures of the pages in this folder")

// picture keeps a picture of the page when the flag -screens names a folder.
func (b *tab) picture(name string) {
	b.Helper()
	if *screens != "" {
		b.shoot(filepath.Join(*screens, name+".png"), tallest)
	}
}

// shoot takes a picture of the page, at most so many pixels tall.
func (b *tab) shoot(file string, tall float64) {
	b.Helper()
	var shot page.CaptureScreenshotResult
	err := chromedp.Do(b.ctx, chromedp.Func(func(ctx context.Context, t *chromedp.Target) (err error) {
		size, err := cdp.Call(ctx, t, page.GetLayoutMetrics, cdp.Empty{})
		if err != nil {
			return err
		}
		shot, err = cdp.Call(ctx, t, page.CaptureScreenshot, page.CaptureScreenshotParams{
			CaptureBeyondViewport: new(true),
			Clip:                  &page.Viewport{Width: size.CSSContentSize.Width, Height: min(size.CSSContentSize.Height, tall), Scale: 1},
		})
		return err
	}))
	if err == nil {
		err = os.WriteFile(file, shot.Data, 0o600)
	}
	if err != nil && !errors.Is(err, context.Canceled) {
		b.Errorf("picture %s: %v", file, err)
	}
}
