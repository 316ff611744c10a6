package checktest

import (
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

var soffice = flag.String("soffice", "", "LibreOffice, to write documents/ anew with")

var only = flag.String("only", "", "folder of menus whose documents are written; all if empty")

// filters are LibreOffice's, by what comes out.
var filters = map[string]string{
	".docx": "HTML (StarWriter)", ".odt": "HTML (StarWriter)",
	".xlsx": "HTML (StarCalc)", ".ods": "HTML (StarCalc)",
}

// TestWriteDocuments writes documents/ when asked to; else it looks that each is there.
func TestWriteDocuments(t *testing.T) {
	if *soffice == "" {
		kinds := map[string]int{}
		for _, folder := range []string{LookedAt, Second, Third} {
			all, err := Documents(folder)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range all {
				kinds[filepath.Ext(d.Name)]++
				if len(d.Data) == 0 {
					t.Errorf("%s is empty", d.Name)
				}
			}
		}
		t.Log(kinds)
		return
	}
	pages := map[string][]string{} // by extension
	folder := t.TempDir()
	for _, from := range []string{LookedAt, Second, Third} {
		if *only != "" && *only != from {
			continue
		}
		writePages(t, folder, from, pages)
	}
	for ext, list := range pages {
		args := append([]string{"--headless", "-env:UserInstallation=file://" + folder + "/office", "--infilter=" + filters[ext], "--convert-to", strings.TrimPrefix(ext, "."), "--outdir", "documents"}, list...)
		if out, err := exec.CommandContext(t.Context(), *soffice, args...).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, out)
		}
	}
}

// writePages writes the layouts that become documents of an office.
func writePages(t *testing.T, folder, from string, pages map[string][]string) {
	t.Helper()
	sound, _ := Sound(from)
	faulty, _ := Faulty(from)
	for i, p := range append(sound, faulty...) {
		l, ext := layoutOf(from, i)
		if ext == l.Ext {
			continue
		}
		page := filepath.Join(folder, p.Name+"."+l.Name+".html")
		if err := os.WriteFile(page, l.Document(p, i), 0o600); err != nil {
			t.Fatal(err)
		}
		pages[ext] = append(pages[ext], page)
	}
}
