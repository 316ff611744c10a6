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
	ErrArchive = errors.New("cannot be read")
	ErrTooMuch = errors.New("too large")
	ErrNested  = errors.New("was not opened")
)

// File is a file of an archive, or why it was not opened.
type File struct {
	Name string // cleaned: folders by "/", nothing that leads out of them
	Data []byte
	Err  error // wraps ErrArchive, ErrTooMuch or ErrNested; nil: it was opened
}

// Unpack reads the files of a zip archive, such as the plans of a class, in its
// order. Folders themselves, hidden files and those that systems add by themselves
// are left out. A file that is broken, locked, far too large for what it was
// packed to, or an archive itself, is not opened and says so in its Err; the
// others are. Names are cleaned, and made different where two are the same; nothing
// is written. The error is of the archive as a whole: it begins with its name and
// wraps ErrArchive or ErrTooMuch.
func Unpack(name string, data []byte) ([]File, error) {
	files, err := unpack(data)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return files, nil
}

func unpack(data []byte) ([]File, error) {
	if len(data) > MaxArchive {
		return nil, fmt.Errorf("the archive is %w: %d bytes, and at most %d are read; split it", ErrTooMuch, len(data), MaxArchive)
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, fmt.Errorf("the archive %w (%w); pack the files again as .zip", ErrArchive, err)
	}
	var files []File
	taken := map[string]bool{}
	left := MaxUnpacked
	for _, f := range z.File {
		name := cleaned(f)
		if name == "" {
			continue
		}
		if len(files) == MaxFiles {
			return nil, fmt.Errorf("the archive is %w: it holds more than %d files; split it", ErrTooMuch, MaxFiles)
		}
		if left <= 0 {
			return nil, errSum
		}
		content, read, err := contents(f, min(MaxFile, left))
		if errors.Is(err, errSum) {
			return nil, err
		}
		left -= read
		if err == nil {
			err = nested(name, content)
		}
		if err != nil {
			content = nil
		}
		files = append(files, File{single(name, taken), content, err})
	}
	if len(files) == 0 {
		return nil, fmt.Errorf("the archive %w: there are no files in it; pack the plans again", ErrArchive)
	}
	return files, nil
}

var errSum = fmt.Errorf("the archive is %w: it unpacks to more than %d bytes; split it", ErrTooMuch, MaxUnpacked)

// archives are the kinds of archive that are not opened inside another, by
// ending and by their first bytes.
var archives = []struct{ ending, begins, is string }{
	{".zip", "", "a zip"},
	{".7z", "7z\xBC\xAF", "an archive"},
	{".rar", "Rar!", "an archive"},
	{".gz", "\x1F\x8B\x08", "an archive"},
	{".tgz", "\x1F\x8B\x08", "an archive"},
	{".tar", "", "an archive"},
	{".bz2", "", "an archive"},
	{".xz", "", "an archive"},
	{".jar", "", "an archive"},
}

// nested refuses a file that is an archive itself. Documents are archives too,
// but under names of their own.
func nested(name string, content []byte) error {
	ending := strings.ToLower(path.Ext(name))
	for _, a := range archives {
		if ending == a.ending || a.begins != "" && bytes.HasPrefix(content, []byte(a.begins)) {
			return fmt.Errorf("it %w: %s inside a zip; hand in the plans themselves", ErrNested, a.is)
		}
	}
	return nil
}

// contents unpacks a file, and gives how many bytes that took, its own or not.
// What the archive states may lie, so they are counted.
func contents(f *zip.File, most int) (data []byte, read int, err error) {
	if f.Flags&1 != 0 {
		return nil, 0, fmt.Errorf("it %w: it has a password; hand it in without one", ErrArchive)
	}
	if f.UncompressedSize64 > 1<<20 && f.UncompressedSize64/maxRatio > f.CompressedSize64 {
		return nil, 0, fmt.Errorf("it is %w: it unpacks to more than %d times its size, as files do that are made to choke a reader; leave it out", ErrTooMuch, maxRatio)
	}
	if f.UncompressedSize64 > MaxFile {
		return nil, 0, fmt.Errorf("it is %w: %d bytes, and at most %d are read; take the pictures out of it", ErrTooMuch, f.UncompressedSize64, MaxFile)
	}
	broken := func(err error) error {
		return fmt.Errorf("it %w: it is damaged in the zip (%w); hand it in again", ErrArchive, err)
	}
	r, err := f.Open()
	if err != nil {
		return nil, 0, broken(err)
	}
	defer r.Close()
	data, err = io.ReadAll(io.LimitReader(r, int64(most)+1))
	switch {
	case len(data) > most:
		return nil, len(data), errSum
	case err != nil:
		return nil, len(data), broken(err)
	}
	return data, len(data), nil
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
