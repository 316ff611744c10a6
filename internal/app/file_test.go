package app_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"plait.example/examples"
	"plait.example/internal/app"
	"plait.example/internal/practical"
)

// folder writes invented files and gives their folder's name.
func folder(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

const twoDishes = `like: two-in-two
title: Baking
dishes:
  - recipe: recipes/scones.txt
    name: Scones for tea
  - name: Salad
    steps:
      - {text: Slice the cucumber, hands: 5}
`

func TestReadFileWithRecipe(t *testing.T) {
	dir := folder(t, map[string]string{"p.yaml": twoDishes, "recipes/scones.txt": scones})
	p, err := new(app.App).ReadFile(filepath.Join(dir, "p.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	d := p.Dishes[0]
	if d.Name != "Scones for tea" || d.Letter != "A" || d.Text != scones || d.Recipe != "" || len(d.Steps) < 2 || d.Steps[0].ID != "A1" {
		t.Errorf("dish %+v", d)
	}
}

func TestReadFileFaults(t *testing.T) {
	for _, tt := range []struct {
		name  string
		files map[string]string
		want  []string // DIR stands for the folder
	}{
		{"NoFile", map[string]string{}, []string{`DIR/p.yaml: there is no such file; check the name`}},
		{"NoRecipe", map[string]string{"p.yaml": twoDishes}, []string{
			`DIR/p.yaml:4:13: dishes[0].recipe: "recipes/scones.txt": there is no such file; check the name; it is looked for beside the practical file`,
		}},
		{"Outside", map[string]string{"p.yaml": strings.ReplaceAll(twoDishes, "recipes/scones.txt", "../../../etc/passwd")}, []string{
			`DIR/p.yaml:4:13: dishes[0].recipe: "../../../etc/passwd" lies outside the practical file's folder; a file in`,
		}},
		{"Huge", map[string]string{"p.yaml": twoDishes, "recipes/scones.txt": strings.Repeat("stir\n", 1<<20)}, []string{
			`DIR/p.yaml:4:13: dishes[0].recipe: "recipes/scones.txt": the file is too large: 5242880 bytes, and at most 2097152 are read; cut it into several files`,
		}},
		{"InTheRecipe", map[string]string{"p.yaml": twoDishes, "recipes/scones.txt": strings.Replace(scones, "12 minutes", "9 hours", 1)}, []string{
			`DIR/recipes/scones.txt:12: dishes[0].steps[2]`,
		}},
		{"NoMethod", map[string]string{"p.yaml": twoDishes, "recipes/scones.txt": "100 g butter\n"}, []string{
			`DIR/recipes/scones.txt:1: dishes[0].recipe: `,
		}},
		{"AllAtOnce", map[string]string{"p.yaml": strings.Replace(twoDishes, "hands: 5", "hands: lots", 1)}, []string{
			`DIR/p.yaml:4:13: dishes[0].recipe: "recipes/scones.txt": there is no such file`,
			`DIR/p.yaml:8:`,
		}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			dir := folder(t, tt.files)
			p, err := new(app.App).ReadFile(filepath.Join(dir, "p.yaml"))
			var faults practical.Faults
			if !errors.As(err, &faults) || p != nil {
				t.Fatalf("got %v, %v, want faults and no practical", p, err)
			}
			if len(faults) != len(tt.want) {
				t.Fatalf("faults\n%v\nwant %d", err, len(tt.want))
			}
			for i, want := range tt.want {
				if got := faults[i].Error(); !strings.HasPrefix(got, strings.ReplaceAll(want, "DIR", dir)) {
					t.Errorf("fault\n%s\nwant\n%s", got, want)
				}
			}
		})
	}
}

// A link out of the folder is no way out either.
func TestReadFileLinkOutside(t *testing.T) {
	secret := filepath.Join(folder(t, map[string]string{"secret.txt": scones}), "secret.txt")
	dir := folder(t, map[string]string{"p.yaml": twoDishes, "recipes/readme": ""})
	if err := os.Symlink(secret, filepath.Join(dir, "recipes", "scones.txt")); err != nil {
		t.Fatal(err)
	}
	_, err := new(app.App).ReadFile(filepath.Join(dir, "p.yaml"))
	if err == nil || !strings.Contains(err.Error(), "outside the folder") {
		t.Errorf("error %v, want it to be refused", err)
	}
}

// The practical file itself may be a link.
func TestReadFileThroughALink(t *testing.T) {
	dir := folder(t, map[string]string{"p.yaml": strings.ReplaceAll(twoDishes, "recipes/scones.txt", "scones.txt")})
	other := folder(t, map[string]string{"scones.txt": scones})
	if err := os.Symlink(filepath.Join(dir, "p.yaml"), filepath.Join(other, "link.yaml")); err != nil {
		t.Fatal(err)
	}
	if p, err := new(app.App).ReadFile(filepath.Join(other, "link.yaml")); err != nil || p.Title != "Baking" {
		t.Errorf("got %v, %v", p, err)
	}
}

// The examples as they are embedded, recipes too.
func TestReadExamples(t *testing.T) {
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil || len(names) < 4 {
		t.Fatalf("examples %v, %v", names, err)
	}
	for _, name := range names {
		p, err := new(app.App).ReadFS(examples.Files, name)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if faults := p.Ready(); len(faults) > 0 {
			t.Errorf("%s: %v", name, faults)
		}
	}
}

func TestExportImport(t *testing.T) {
	a := mustApp(t)
	r := mustNew(t, a)
	r, _, err := a.AddDish(t.Context(), r.ID, r.Version, scones)
	if err != nil {
		t.Fatal(err)
	}
	out, err := a.Export(t.Context(), r.ID)
	if err != nil || out.Name != "two-dishes-in-two-hours.yaml" {
		t.Fatalf("export %q, %v", out.Name, err)
	}
	back, err := a.Import(t.Context(), out.Name, out.Data)
	if !errors.As(err, new(practical.Faults)) && err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(r.Practical, back.Practical); diff != "" || back.ID == r.ID {
		t.Errorf("%v; brought in again (-want +got):\n%s", err, diff)
	}
	_, err = a.Import(t.Context(), "p.yaml", []byte(twoDishes))
	if err == nil || !strings.Contains(err.Error(), "did not come with this file") {
		t.Errorf("import of a file that names another: %v", err)
	}
}
