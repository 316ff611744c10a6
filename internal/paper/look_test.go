package paper

import (
	"os"
	"path/filepath"
	"testing"
)

// TestLook writes the sheets to the folder named by PAPER_LOOK, to be looked at.
func TestLook(t *testing.T) {
	dir := os.Getenv("PAPER_LOOK")
	if dir == "" {
		dir = t.TempDir()
	}
	for name, p := range samples() {
		for suffix, s := range map[string]Sheet{"p": {}, "l": {Landscape: true}, "pL": {LargeType: true}, "lL": {Landscape: true, LargeType: true, Name: "Sam O."}} {
			h, err := HTML(p, s)
			if err != nil {
				t.Fatal(err)
			}
			b, err := PDF(p, s)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, name+"-"+suffix+".pdf"), b, 0o644); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, name+"-"+suffix+".html"), h, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}
