package format

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// Limits of an archive of files. What goes beyond is refused.
const (
	MaxArchive  = 64 << 20  // bytes of the archive
	MaxFiles    = 500       // files in it
	MaxFile     = 20 << 20  // bytes of one, unpacked
	MaxUnpacked = 200 << 20 // bytes of all, unpacked
	maxRatio    = 200       // unpacked to packed, of a file above a megabyte
	maxName     = 120       // characters of a name
)

// Refusals of an archive.
var (
	ErrArchive = errors.New("the archive cannot be read")
	ErrTooMuch = errors.New("the archive is too large")
)

// File is a file of an archive.
type File struct {
	Name string // cleaned: folders by "/", nothing that leads out of them
	Data []byte
}

// Unpack reads the files of a zip archive, such as the plans of a class, in its
// order. Folders themselves, hidden files, those that systems add by themselves
// and archives inside are left out. Names are cleaned, and made different where
// two are the same; nothing is written. The error begins with the archive's name and wraps
// ErrArchive or ErrTooMuch.
func Unpack(name string, data []byte) ([]File, error) {
	files, err := unpack(data)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return files, nil
}

func unpack(data []byte) ([]File, error) {
	if len(data) > MaxArchive {
		return nil, fmt.Errorf("%w: %d bytes, and at most %d are read; split it", ErrTooMuch, len(data), MaxArchive)
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, fmt.Errorf("%w (%w); pack the files again as .zip", ErrArchive, err)
	}
	var files []File
	taken := map[string]bool{}
	sum := 0
	for _, f := range z.File {
		name := cleaned(f)
		if name == "" {
			continue
		}
		if len(files) == MaxFiles {
			return nil, fmt.Errorf("%w: it holds more than %d files; split it", ErrTooMuch, MaxFiles)
		}
		if sum >= MaxUnpacked {
			return nil, errSum
		}
		content, err := contents(f, min(MaxFile, MaxUnpacked-sum))
		if err != nil {
			return nil, err
		}
		if nested(name, content) {
			continue
		}
		sum += len(content)
		files = append(files, File{single(name, taken), content})
	}
	if len(files) == 0 {
		return nil, fmt.Errorf("%w: there are no files in it", ErrArchive)
	}
	return files, nil
}

var errSum = fmt.Errorf("%w: it unpacks to more than %d bytes; split it", ErrTooMuch, MaxUnpacked)

// nested says whether a file is an archive itself, as documents are too, but
// under a name of their own.
func nested(name string, content []byte) bool {
	switch strings.ToLower(path.Ext(name)) {
	case ".zip", ".7z", ".rar", ".gz", ".tgz", ".tar", ".bz2", ".xz", ".jar":
		return true
	}
	return bytes.HasPrefix(content, []byte("\x1F\x8B\x08")) || bytes.HasPrefix(content, []byte("Rar!")) || bytes.HasPrefix(content, []byte("7z\xBC\xAF"))
}

// contents unpacks a file. What the archive states may lie, so the bytes are counted.
func contents(f *zip.File, most int) ([]byte, error) {
	if f.Flags&1 != 0 {
		return nil, fmt.Errorf("%w: %.60q has a password; pack the files again without one", ErrArchive, f.Name)
	}
	if f.UncompressedSize64 > 1<<20 && f.UncompressedSize64/maxRatio > f.CompressedSize64 {
		return nil, fmt.Errorf("%w: %.60q unpacks to more than %d times its size, as files do that are made to choke a reader; leave it out", ErrTooMuch, f.Name, maxRatio)
	}
	if f.UncompressedSize64 > MaxFile {
		return nil, fmt.Errorf("%w: %.60q has %d bytes, and at most %d are read; leave it out", ErrTooMuch, f.Name, f.UncompressedSize64, MaxFile)
	}
	r, err := f.Open()
	if err != nil {
		return nil, fmt.Errorf("%w: %.60q (%w); pack the files again as .zip", ErrArchive, f.Name, err)
	}
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, int64(most)+1))
	switch {
	case len(data) > most:
		return nil, errSum
	case err != nil:
		return nil, fmt.Errorf("%w: %.60q (%w); pack the files again as .zip", ErrArchive, f.Name, err)
	}
	return data, nil
}

// cleaned is the name of a file, "" for what is left out: folders, hidden files
// and those that systems and word processors add by themselves.
func cleaned(f *zip.File) string {
	name := f.Name
	if !utf8.ValidString(name) { // by the usage of old systems; the letters of Latin languages are the same in most of their tables
		if decoded, err := charmap.CodePage850.NewDecoder().String(name); err == nil {
			name = decoded
		}
	}
	name = strings.ReplaceAll(name, `\`, "/")
	if strings.HasSuffix(name, "/") || f.Mode().IsDir() || !f.Mode().IsRegular() {
		return ""
	}
	var parts []string
	for _, part := range strings.Split(name, "/") {
		drive := strings.HasSuffix(part, ":")
		part = strings.TrimSpace(strings.Map(visible, part))
		switch {
		case part == "" || part == "." || part == ".." || drive:
		case strings.HasPrefix(part, ".") || part == "__MACOSX" || strings.HasPrefix(part, "~$") || strings.EqualFold(part, "thumbs.db") || strings.EqualFold(part, "desktop.ini"):
			return ""
		default:
			parts = append(parts, shortened(part))
		}
	}
	return strings.Join(parts[max(0, len(parts)-8):], "/")
}

// visible puts an underscore where a name has a sign that systems forbid, and
// drops those that turn the direction of writing or that nobody sees.
func visible(r rune) rune {
	switch {
	case unicode.IsControl(r) || unicode.Is(unicode.Cf, r):
		return -1
	case strings.ContainsRune(`<>"|?*:`, r):
		return '_'
	}
	return r
}

// shortened keeps the end of a long name, where it says what kind of file it is.
func shortened(part string) string {
	letters := []rune(part)
	if len(letters) <= maxName {
		return part
	}
	return string(letters[:maxName-20]) + string(letters[len(letters)-20:])
}

// single makes a name different from those before it.
func single(name string, taken map[string]bool) string {
	fresh := name
	for n := 2; taken[strings.ToLower(fresh)]; n++ {
		end := path.Ext(name)
		fresh = fmt.Sprintf("%s (%d)%s", strings.TrimSuffix(name, end), n, end)
	}
	taken[strings.ToLower(fresh)] = true
	return fresh
}
