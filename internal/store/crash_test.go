package store

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

const crashFolder = "PLAIT_TEST_CRASH_FOLDER"

func TestMain(m *testing.M) {
	if dir := os.Getenv(crashFolder); dir != "" {
		if err := writeUntilKilled(dir); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
	os.Exit(m.Run())
}

// writeUntilKilled is the child: it keeps versions for ever, and prints
// "id version title" after each one that the store says is kept.
func writeUntilKilled(dir string) error {
	ctx := context.Background()
	s, err := Open(ctx, dir)
	if err != nil {
		return err
	}
	r, err := s.Create(ctx, titled("0"), "new", noon)
	for i := 1; err == nil; i++ {
		fmt.Println(r.ID, r.Version, r.Practical.Title)
		r, err = s.Save(ctx, r.ID, r.Version, titled(strconv.Itoa(i)+strings.Repeat("x", i%7*1000)), "edit", noon)
	}
	return err
}

// A program killed at any moment loses nothing that it had acknowledged, leaves
// no half change, and leaves the folder free for the next one. (SIGKILL does not
// test the disk's own promises; for those the journal is synced at each commit.)
func TestKilledAtAnyMoment(t *testing.T) {
	dir := t.TempDir()
	chance := rand.New(rand.NewPCG(1, 2))
	kept := map[string]int{} // of each practical, the last acknowledged version
	for range 12 {
		for id, version := range runAndKill(t, dir, 1+chance.IntN(60)) {
			kept[id] = version
		}
		checkKept(t, dir, kept)
	}
	if len(kept) != 12 {
		t.Errorf("%d practicals acknowledged, want 12", len(kept))
	}
}

// runAndKill starts the child and kills it once it has acknowledged so many
// versions; what it acknowledged beyond, before the signal struck, counts too.
func runAndKill(t *testing.T, dir string, after int) map[string]int {
	t.Helper()
	child := exec.CommandContext(t.Context(), os.Args[0])
	child.Env = append(os.Environ(), crashFolder+"="+dir)
	child.Stderr = os.Stderr
	out, err := child.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := child.Start(); err != nil {
		t.Fatal(err)
	}
	acknowledged := map[string]int{}
	lines := bufio.NewReader(out)
	for n := 1; ; n++ {
		line, err := lines.ReadString('\n')
		if err == io.EOF {
			break // a line cut short was not an acknowledgement
		}
		if err != nil {
			t.Fatal(err)
		}
		var id, title string
		var version int
		if _, err := fmt.Sscan(line, &id, &version, &title); err != nil {
			t.Fatalf("child said %q: %v", line, err)
		}
		acknowledged[id] = version
		if n == after {
			if err := child.Process.Kill(); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := child.Wait(); err == nil || child.ProcessState.Exited() {
		t.Fatalf("the child ended by itself: %v", err)
	}
	if len(acknowledged) != 1 {
		t.Fatalf("acknowledged %v, want one practical", acknowledged)
	}
	return acknowledged
}

func checkKept(t *testing.T, dir string, kept map[string]int) {
	t.Helper()
	s, err := Open(t.Context(), dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, pragma := range []string{"integrity_check", "foreign_key_check"} {
		rows, err := s.read.QueryContext(t.Context(), "PRAGMA "+pragma)
		if err != nil {
			t.Fatal(err)
		}
		for rows.Next() {
			var said string
			if err := rows.Scan(&said); err != nil || said != "ok" {
				t.Errorf("%s: %q, %v", pragma, said, err)
			}
		}
		if err := rows.Err(); err != nil {
			t.Error(err)
		}
	}
	for id, version := range kept {
		checkPractical(t, s, id, version)
	}
	if err := s.Close(); err != nil {
		t.Error(err)
	}
}

// checkPractical wants every version up to the acknowledged one, whole and in
// order; the change in flight may be there too, or not at all.
func checkPractical(t *testing.T, s *Store, id string, version int) {
	t.Helper()
	r, err := s.Load(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	if r.Version != version && r.Version != version+1 {
		t.Errorf("practical %s stands at version %d, acknowledged %d", id, r.Version, version)
	}
	var whole int
	err = s.read.QueryRowContext(t.Context(), `
SELECT count(*) FROM versions
WHERE practical = ? AND parent IS nullif(number - 1, 0)
  AND rtrim(json_extract(document, '$.title'), 'x') = cast(number - 1 AS TEXT)`, id).Scan(&whole)
	if err != nil || whole != r.Version {
		t.Errorf("practical %s: %d whole versions of %d (%v)", id, whole, r.Version, err)
	}
}
