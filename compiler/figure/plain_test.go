package figure

import (
	"math/rand"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

// TestPlainReadsAsTheDecoderDoes holds the reader of plain files to encoding/xml: on
// every drawing of the samples, and on each with a few bytes changed, what it takes
// must give the same drawing and the same findings in the same places.
func TestPlainReadsAsTheDecoderDoes(t *testing.T) {
	files, err := filepath.Glob("../../samples/*/figures/*.svg")
	if err != nil || len(files) == 0 {
		t.Fatal("the samples have no drawings:", err)
	}
	random := rand.New(rand.NewSource(1))
	taken, left := 0, 0
	for _, name := range files {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !sameAsDecoder(t, src) {
			t.Errorf("%s is not read as a plain file", name)
		}
		for range 50 {
			if sameAsDecoder(t, changed(src, random)) {
				taken++
			} else {
				left++
			}
		}
	}
	t.Logf("of the changed files %d were read as plain and %d were not", taken, left)
	if taken < 200 || left < 200 {
		t.Errorf("%d read as plain and %d not prove little", taken, left)
	}
}

// TestPlainGivesUp asserts what is left to encoding/xml.
func TestPlainGivesUp(t *testing.T) {
	for _, src := range []string{
		``, `<svg>`, `<svg/><svg/>`, `<svg></g></svg>`, `<svg>&amp;</svg>`, "<svg>\r\n</svg>", "<svg>\x01</svg>", `<svg>]]></svg>`,
		`<svg><![CDATA[a]]></svg>`, `<!DOCTYPE svg><svg/>`, `<?a b?><svg/>`, `<svg:svg/>`, `<svg a:b="c"/>`, `<svg xmlns="a"/>`,
		`<svg><g xmlns="http://www.w3.org/2000/svg"/></svg>`, `<svg a=b/>`, `<svg a="<"/>`, `<svg a/>`, `<svg><!-- a--b --></svg>`,
		"<svg>\ufeff</svg>", `<svg ä="1"/>`, `<svg></svg`, `<svg a="1`, `<svg/`,
	} {
		src = strings.Replace(src, "<svg", `<svg viewBox="0 0 9 9"`, 1)
		if newReader("a.svg", []byte(src)).readPlain([]byte(src)) {
			t.Errorf("%q was read as a plain file", src)
		}
	}
}

// sameAsDecoder reports whether a file is plain.
func sameAsDecoder(t *testing.T, src []byte) bool {
	t.Helper()
	r, by := newReader("a.svg", src), newReader("a.svg", src)
	if !r.acceptable(src) || !r.readPlain(src) {
		return false
	}
	by.decode(src)
	art, found := r.result()
	wantArt, wantFound := by.result()
	if !reflect.DeepEqual(art, wantArt) || !reflect.DeepEqual(found, wantFound) {
		t.Errorf("%s\nplain   %v %v\ndecoder %v %v", src, art, found, wantArt, wantFound)
	}
	return true
}

// changed gives a file with up to three places changed.
func changed(src []byte, random *rand.Rand) []byte {
	parts := []string{"", "<", ">", "/", "\"", "'", "=", " ", "\n", "\t", "-", "--", "]]>", "&", "&amp;", "&#65;", "a", "é", ":", "<g>", "</g>", "<g/>",
		"<!-- a -->", "<!--", "<?a?>", "<title>a</title>", `<text x="1" y="2">a<tspan>b</tspan></text>`, ` x="1"`, ` xmlns="http://www.w3.org/2000/svg"`,
		` xmlns:a="b"`, "<a:b/>", " onload=\"a\"", "<svg/>", "<![CDATA[a]]>", "\r", "\x00", "0", ".", "e"}
	out := append([]byte(nil), src...)
	for range 1 + random.Intn(3) {
		at := random.Intn(len(out))
		end := min(len(out), at+random.Intn(3))
		out = append(append(append([]byte(nil), out[:at]...), parts[random.Intn(len(parts))]...), out[end:]...)
	}
	return out
}
