package main

import (
	"bufio"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// asProgram makes the test binary be plait itself, so that signals are real.
const asProgram = "PLAIT_TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		main()
	}
	os.Exit(m.Run())
}

// process starts plait serve as a process of its own.
func process(t *testing.T, folder string) (child *exec.Cmd, address string) {
	t.Helper()
	child = exec.CommandContext(t.Context(), os.Args[0], "serve", "--data", folder, "--listen", "127.0.0.1:0")
	child.Env = append(os.Environ(), asProgram+"=1")
	child.Stderr = os.Stderr
	out, err := child.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := child.Start(); err != nil {
		t.Fatal(err)
	}
	line, err := bufio.NewReader(out).ReadString('\n')
	found := addressLine.FindStringSubmatch(line)
	if found == nil {
		t.Fatalf("first line %q, %v", line, err)
	}
	return child, found[1]
}

// What a page has said is saved is there after kill -9.
func TestKilledServerKeepsWhatAPageSaid(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "kept")
	var made []string
	for range 5 {
		child, address := process(t, folder)
		list, _ := get(t, address)
		for _, path := range made {
			if !strings.Contains(list, path) {
				t.Errorf("%s was acknowledged and is lost", path)
			}
		}
		for range 3 {
			_, from := post(t, address+"practicals", url.Values{"start": {"two-in-two"}})
			made = append(made, from.Path)
		}
		if err := child.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		if err := child.Wait(); err == nil {
			t.Error("the server ended by itself")
		}
	}
}

func TestInterruptEndsInOrder(t *testing.T) {
	if runtime.GOOS == "windows" {
		return // a process cannot be interrupted there by another
	}
	child, _ := process(t, t.TempDir())
	if err := child.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	if err := child.Wait(); err != nil {
		t.Errorf("after an interrupt: %v, want exit 0", err)
	}
}
