package network

import (
	"flag"
	"os"
	"testing"
)

// TestMain keeps the random practicals few, since each is planned, explained
// and relaxed in full. Ask for more with -rapid.checks=200.
func TestMain(m *testing.M) {
	if err := flag.Set("rapid.checks", "15"); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}
