package pdf

import (
	"math"
	"slices"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"
)

// run is text in one font and size. Its text is what is drawn, character for
// character; each has a shape in the font.
type run struct {
	face  *face
	size  float64
	text  []rune
	width float64
	link  string // the id it leads to, or ""
}

// box is the area of a run whose baseline begins at (x, y).
func (r run) box(x, y float64) rect {
	up := r.face.ascent * r.size
	return rect{x, y - up, r.width, up + r.face.descent*r.size}
}

// setter turns characters into runs: it chooses fonts and knows widths.
type setter struct {
	faces   *faces
	buf     sfnt.Buffer
	widths  map[glyph]int
	missing map[rune]bool
}

type glyph struct {
	face *face
	r    rune
}

func newSetter() (*setter, error) {
	f, err := loadFaces()
	if err != nil {
		return nil, err
	}
	return &setter{faces: f, widths: map[glyph]int{}, missing: map[rune]bool{}}, nil
}

func (s *setter) missingRunes() []rune {
	var out []rune
	for r := range s.missing {
		out = append(out, r)
	}
	slices.Sort(out)
	return out
}

const noGlyph = -1

// replacement is drawn in place of a character that no font has.
const replacement = '□'

// advance gives a character's width in thousandths of the size, or noGlyph. It
// rounds as the PDF file does (ISO 32000-1, 9.7.4.3: widths in glyph space units
// of 1/1000), so that a long line ends where the layout thinks it does.
func (s *setter) advance(f *face, r rune) int {
	key := glyph{f, r}
	if w, ok := s.widths[key]; ok {
		return w
	}
	w := noGlyph
	if r <= 0xFFFF { // the PDF writer addresses glyphs by 16-bit code points
		if i, err := f.font.GlyphIndex(&s.buf, r); err == nil && i != 0 {
			if a, err := f.font.GlyphAdvance(&s.buf, i, emFixed(f.font), 0); err == nil {
				w = int(math.Round(float64(a) / 64 * 1000 / f.perEm))
			}
		}
	}
	s.widths[key] = w
	return w
}

func emFixed(f *sfnt.Font) fixed.Int26_6 { return fixed.I(int(f.UnitsPerEm())) }

// shape sets text in a style. Characters that go together (a fraction, a letter
// and its accents) come from one font.
func (s *setter) shape(text string, st style, link string) []run {
	var out []run
	rs := printable([]rune(norm.NFC.String(text)))
	fonts := s.faces.pick(st)
	for i := 0; i < len(rs); {
		end, fraction := clusterEnd(rs, i)
		try := []*face{fonts.text, fonts.fallback}
		if fraction {
			try = []*face{fonts.fraction, fonts.text, fonts.fallback}
		}
		if f := s.faceFor(try, rs[i:end]); f != nil {
			out = s.extend(out, f, st.size, rs[i:end], link)
		} else {
			out = s.patch(out, try, st.size, rs[i:end], link)
		}
		i = end
	}
	return out
}

// faceFor gives the first font that has all of the characters.
func (s *setter) faceFor(fonts []*face, rs []rune) *face {
	for _, f := range fonts {
		if !slices.ContainsFunc(rs, func(r rune) bool { return s.advance(f, r) == noGlyph }) {
			return f
		}
	}
	return nil
}

// patch sets characters one by one, with the replacement for those that no font has.
func (s *setter) patch(out []run, fonts []*face, size float64, rs []rune, link string) []run {
	for _, r := range rs {
		f := s.faceFor(fonts, []rune{r})
		if f == nil {
			s.missing[r] = true
			r = replacement
			f = s.faceFor(fonts, []rune{r})
		}
		out = s.extend(out, f, size, []rune{r}, link)
	}
	return out
}

// extend adds characters to the last run if they look the same. The runs must be
// the caller's own.
func (s *setter) extend(out []run, f *face, size float64, rs []rune, link string) []run {
	w := 0
	for _, r := range rs {
		w += s.advance(f, r)
	}
	next := run{f, size, rs, float64(w) * size / 1000, link}
	if n := len(out); n > 0 && out[n-1].looksLike(next) {
		out[n-1].text = append(out[n-1].text, rs...)
		out[n-1].width += next.width
		return out
	}
	next.text = slices.Clone(rs)
	return append(out, next)
}

func (r run) looksLike(o run) bool {
	return r.face == o.face && r.size == o.size && r.link == o.link
}

// join appends a run, or lengthens the last one if the two look the same. It
// changes no text that others may hold.
func join(out []run, r run) []run {
	if n := len(out); n > 0 && out[n-1].looksLike(r) {
		l := &out[n-1]
		l.text = append(slices.Clip(l.text), r.text...)
		l.width += r.width
		return out
	}
	return append(out, r)
}

func sum(rs []run) float64 {
	w := 0.0
	for _, r := range rs {
		w += r.width
	}
	return w
}
