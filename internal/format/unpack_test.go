package format_test

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"math/rand/v2"
	"path"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"plait.example/internal/format"
)

// archive packs names and contents, in pairs.
func archive(t testing.TB, files ...string) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for i := 0; i < len(files); i += 2 {
		w, err := z.CreateHeader(&zip.FileHeader{Name: files[i], Method: zip.Deflate})
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasSuffix(files[i], "/") {
			continue
		}
		if _, err := w.Write([]byte(files[i+1])); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// What is in a zip of a class that three systems made: their own files beside
// the plans, folders, names that lead out or look like others.
func TestUnpack(t *testing.T) {
	files, err := format.Unpack("8b.zip", archive(t,
		"8b/", "", "8b/Ana plan.docx", "1", "__MACOSX/8b/._Ana plan.docx", "x", "8b/.DS_Store", "x", "8b/~$Ana plan.docx", "x", "Thumbs.db", "x", "8b/desktop.ini", "x",
		"../../etc/passwd", "2", "C:\\Users\\Ben\\plan.odt", "3", "/8b/./Ana plan.docx", "4", "8B/ANA PLAN.DOCX", "5", "a\u202Excod.exe", "6", "inner.zip", "PK\x03\x04", "plan.gz", "x", "x\x1f<b>?.csv", "7",
		strings.Repeat("é", 300)+".docx", "8", "b\x81r.txt", "9", "noise", "\x1F\x8B\x08"))
	if err != nil {
		t.Fatal(err)
	}
	var got, nested []string
	for _, f := range files {
		if errors.Is(f.Err, format.ErrNested) && f.Data == nil {
			nested = append(nested, f.Name+": "+f.Err.Error())
			continue
		}
		got = append(got, f.Name+"="+string(f.Data))
	}
	want := []string{
		"8b/Ana plan.docx=1", "etc/passwd=2", "Users/Ben/plan.odt=3", "8b/Ana plan (2).docx=4", "8B/ANA PLAN (3).DOCX=5", "axcod.exe=6", "x_b__.csv=7",
		strings.Repeat("é", 100) + strings.Repeat("é", 15) + ".docx=8", "bür.txt=9",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	const told = "it was not opened: an archive inside a zip; hand in the plans themselves"
	if diff := cmp.Diff([]string{"inner.zip: it was not opened: a zip inside a zip; hand in the plans themselves", "plan.gz: " + told, "noise: " + told}, nested); diff != "" {
		t.Error(diff)
	}
}

// What is wrong with one file refuses that one, and the plans beside it are read.
func TestUnpackRefusesOne(t *testing.T) {
	locked := archive(t, "ana.txt", "plan", "bad.docx", "secret")
	binary.LittleEndian.PutUint16(locked[bytes.LastIndex(locked, []byte("PK\x01\x02"))+8:], 1) // APPNOTE 4.4.4: bit 0 is encryption
	lying := archive(t, "ana.txt", "plan", "bad.docx", strings.Repeat("lie ", 1<<10))
	binary.LittleEndian.PutUint32(lying[bytes.LastIndex(lying, []byte("PK\x01\x02"))+24:], 3)
	torn := archive(t, "ana.txt", "plan", "bad.docx", strings.Repeat("not so ", 1<<10))
	for i := range 8 { // what is packed begins behind the name
		torn[bytes.Index(torn, []byte("bad.docx"))+len("bad.docx")+i] ^= 0x55
	}
	for name, c := range map[string]struct {
		data []byte
		want error
		says string
	}{
		"bomb":  {archive(t, "ana.txt", "plan", "bad.docx", strings.Repeat("\x00", 8<<20)), format.ErrTooMuch, "times its size"},
		"large": {stating(t, "ana.txt", "plan", "bad.docx", 30<<20), format.ErrTooMuch, "at most 20971520 are read"},
		"torn":  {torn, format.ErrArchive, "damaged in the zip"},
	} {
		files, err := format.Unpack("8b.zip", c.data)
		if err != nil || len(files) != 2 || string(files[0].Data) != "plan" || files[0].Err != nil {
			t.Errorf("%s: %d files, %v", name, len(files), err)
			continue
		}
		if bad := files[1]; bad.Name != "bad.docx" || bad.Data != nil || !errors.Is(bad.Err, c.want) || !strings.Contains(bad.Err.Error(), c.says) {
			t.Errorf("%s: %q, %v; want %q", name, bad.Name, bad.Err, c.says)
		}
	}
}

func TestUnpackRefusals(t *testing.T) {
	many := make([]string, 0, 2*(format.MaxFiles+1))
	for i := range format.MaxFiles + 1 {
		many = append(many, fmt.Sprint(i), "x")
	}
	for name, c := range map[string]struct {
		data []byte
		want error
		says string
	}{
		"no zip":    {[]byte("Dear all"), format.ErrArchive, "as .zip"},
		"nothing":   {archive(t, ".hidden", "x", "folder/", ""), format.ErrArchive, "no files"},
		"many":      {archive(t, many...), format.ErrTooMuch, "more than 500 files"},
		"too large": {make([]byte, format.MaxArchive+1), format.ErrTooMuch, "split it"},
		"sum":       {noise(t), format.ErrTooMuch, "unpacks to more"},
	} {
		files, err := format.Unpack("8b.zip", c.data)
		if !errors.Is(err, c.want) || len(files) > 0 || !strings.Contains(err.Error(), c.says) || !strings.HasPrefix(err.Error(), "8b.zip: ") {
			t.Errorf("%s: %d files, %v; want %q", name, len(files), err, c.says)
		}
	}
}

// stating is an archive with a file, and one whose size is only stated.
func stating(t testing.TB, first, content, name string, size uint64) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	w, err := z.Create(first)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := w.Write([]byte(content)); err != nil {
		t.Fatal(err)
	}
	if _, err := z.CreateRaw(&zip.FileHeader{Name: name, Method: zip.Store, CRC32: crc32.ChecksumIEEE(nil), UncompressedSize64: size, CompressedSize64: size}); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// noise is an archive of files that pack a hundredfold, each allowed, in sum too much.
func noise(t testing.TB) []byte {
	t.Helper()
	r := rand.New(rand.NewPCG(1, 2))
	line := make([]byte, 4000)
	for i := range line {
		line[i] = byte(r.IntN(256))
	}
	one := strings.Repeat(string(line), 19<<20/len(line))
	var files []string
	for i := range 12 {
		files = append(files, fmt.Sprint(i), one)
	}
	return archive(t, files...)
}

func FuzzUnpack(f *testing.F) {
	f.Add("a/b.docx", "../c")
	f.Add("C:\\x", "\x81\xFF/.")
	f.Fuzz(func(t *testing.T, one, two string) {
		if len(one) > 1<<16-1 || len(two) > 1<<16-1 {
			return
		}
		files, err := format.Unpack("z", archive(t, one, "1", two, "2"))
		if err != nil && len(files) > 0 {
			t.Fatal(err)
		}
		for _, f := range files {
			if path.Clean("/"+f.Name) != "/"+f.Name || strings.Contains(f.Name, "..") && strings.Contains(f.Name, "/../") || !utf8.ValidString(f.Name) || strings.ContainsAny(f.Name, "\\:\x00") {
				t.Errorf("%q", f.Name)
			}
		}
		if len(files) == 2 && strings.EqualFold(files[0].Name, files[1].Name) {
			t.Errorf("twice %q", files[0].Name)
		}
	})
}
