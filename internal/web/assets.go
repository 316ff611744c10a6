package web

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"io/fs"
	"net/http"
	"path"
	"strings"
	"sync"

	"plait.example/internal/fonts"
)

//go:embed assets
var assetFiles embed.FS

// stamps holds a short digest for each file, so that a new version of the
// program is never shown with old style sheets.
var stamps = sync.OnceValue(func() map[string]string {
	found := map[string]string{}
	for _, tree := range trees() {
		_ = fs.WalkDir(tree.files, ".", func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			data, err := fs.ReadFile(tree.files, name)
			sum := sha256.Sum256(data)
			found[path.Join(tree.at, name)] = hex.EncodeToString(sum[:6])
			return err
		})
	}
	sum := sha256.Sum256(inks())
	found["inks.css"] = hex.EncodeToString(sum[:6])
	return found
})

type tree struct {
	at    string
	files fs.FS
}

func trees() []tree {
	own, err := fs.Sub(assetFiles, "assets")
	if err != nil {
		panic("web: " + err.Error()) // a broken build
	}
	return []tree{{"", own}, {"fonts", fonts.FS()}}
}

// address is where a page finds a file.
func address(name string) string { return "/assets/" + name + "?v=" + stamps()[name] }

// assets serves style, script, pictures and fonts.
func assets() http.Handler {
	all := trees()
	own := http.FileServerFS(all[0].files)
	letters := http.StripPrefix("/fonts", http.FileServerFS(all[1].files))
	return http.StripPrefix("/assets", http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		name := strings.TrimPrefix(path.Clean(r.URL.Path), "/")
		stamp, known := stamps()[name]
		if !known {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("ETag", `"`+stamp+`"`)
		w.Header().Set("Cache-Control", "public, max-age=3600")
		switch {
		case name == "inks.css":
			w.Header().Set("Content-Type", "text/css; charset=utf-8")
			_, _ = w.Write(inks())
		case strings.HasPrefix(name, "fonts/"):
			letters.ServeHTTP(w, r)
		default:
			own.ServeHTTP(w, r)
		}
	}))
}
