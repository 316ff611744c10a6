package network

import (
	"flag"
	"os"
	"testing"
)

// TestMain keeps the random practicals few, since each is planned, explained
// and relaxed in full. Ask for more with -rapid.checks=200.
func TestMain(m *testing.M) {
	for name, value := range map[string]string{"rapid.checks": "8", "rapid.seed": "1"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
