package pdf

import (
	"sync"

	"github.com/go-fonts/dejavu/dejavusans"
	"github.com/go-fonts/dejavu/dejavusansbold"
	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"github.com/go-fonts/dejavu/dejavuserifcondensed"
	"github.com/go-fonts/dejavu/dejavuserifcondensedbold"
	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansbolditalic"
	"github.com/go-fonts/liberation/liberationsansitalic"
	"github.com/go-fonts/liberation/liberationsansregular"
	"github.com/go-fonts/liberation/liberationserifbold"
	"github.com/go-fonts/liberation/liberationserifbolditalic"
	"github.com/go-fonts/liberation/liberationserifitalic"
	"github.com/go-fonts/liberation/liberationserifregular"
	"golang.org/x/image/font/sfnt"
)

// family is one of the two text faces: serif for reading, sans for finding.
type family int

const (
	serif family = iota
	sans
)

// face is one font file. Ascent and descent are parts of the size.
type face struct {
	name            string
	ttf             []byte
	font            *sfnt.Font
	perEm           float64
	ascent, descent float64
}

// faces are the fonts in which text is set: for each family regular, italic,
// bold and bold italic; regular and bold for fractions, which in the text fonts
// are too small to be read from a distance and not of one pattern; and the two that
// stand in where those lack a shape.
type faces struct {
	text     [2][4]*face
	fraction [2][2]*face
	fallback [2]*face
}

// choice is the fonts to try for a style: text, then fallback, and for fractions
// their own before both.
type choice struct{ text, fraction, fallback *face }

func (f *faces) pick(s style) choice {
	i, b := 0, 0
	if s.italic {
		i = 1
	}
	if s.bold {
		i, b = i+2, 1
	}
	return choice{f.text[s.family][i], f.fraction[s.family][b], f.fallback[b]}
}

// loadFaces reads the font files once; a parsed font is never changed.
var loadFaces = sync.OnceValues(func() (*faces, error) {
	r := fontReader{}
	f := &faces{}
	f.text[serif] = [4]*face{
		r.read("LiberationSerif", liberationserifregular.TTF),
		r.read("LiberationSerif-Italic", liberationserifitalic.TTF),
		r.read("LiberationSerif-Bold", liberationserifbold.TTF),
		r.read("LiberationSerif-BoldItalic", liberationserifbolditalic.TTF),
	}
	f.text[sans] = [4]*face{
		r.read("LiberationSans", liberationsansregular.TTF),
		r.read("LiberationSans-Italic", liberationsansitalic.TTF),
		r.read("LiberationSans-Bold", liberationsansbold.TTF),
		r.read("LiberationSans-BoldItalic", liberationsansbolditalic.TTF),
	}
	f.fraction[serif] = [2]*face{
		r.read("DejaVuSerifCondensed", dejavuserifcondensed.TTF),
		r.read("DejaVuSerifCondensed-Bold", dejavuserifcondensedbold.TTF),
	}
	f.fraction[sans] = [2]*face{
		r.read("DejaVuSansCondensed", dejavusanscondensed.TTF),
		r.read("DejaVuSansCondensed-Bold", dejavusanscondensedbold.TTF),
	}
	f.fallback = [2]*face{
		r.read("DejaVuSans", dejavusans.TTF),
		r.read("DejaVuSans-Bold", dejavusansbold.TTF),
	}
	return f, r.err
})

// fontReader keeps the first error, so that the list above stays a list.
type fontReader struct{ err error }

func (r *fontReader) read(name string, ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		r.err = err
		return nil
	}
	em := float64(f.UnitsPerEm())
	fc := &face{name: name, ttf: ttf, font: f, perEm: em}
	m, err := f.Metrics(nil, emFixed(f), 0)
	if err != nil {
		r.err = err
		return nil
	}
	fc.ascent = float64(m.Ascent) / 64 / em
	fc.descent = float64(m.Descent) / 64 / em
	return fc
}
