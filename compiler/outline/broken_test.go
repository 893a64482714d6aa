package outline

import (
	"bytes"
	"math/rand/v2"
	"testing"
)

// TestBrokenFiles breaks files at random places, as a bad disk or a hurried hand does.
// Whatever is read then is either reported or can be measured.
func TestBrokenFiles(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	svg := inMM(skirt + `<path id="opening-a" d="M150 250A20 10 30 1 1 170 250Z"/><line id="fold-b" x2="9"/>`)
	corners := inMM(`<path id="outline" d="M100 100H300V300H100Z"/><circle id="corner-top" cx="100.1" cy="100" r="2"/><circle id="corner-low" cx="300" cy="200" r="2"/>`)
	read := 0
	for range 4000 {
		for name, src := range map[string]string{"o.svg": svg, "c.svg": corners, "p.dxf": patch(t)} {
			b := broken(rnd, []byte(src))
			d, found := Read(name, b)
			if d == nil {
				if len(found) == 0 {
					t.Fatalf("nothing read and nothing said:\n%s", b)
				}
				continue
			}
			read++
			measured(t, d, b)
		}
	}
	if read < 500 {
		t.Errorf("only %d of them could be read: they are broken too much to show anything", read)
	}
}

// broken changes, doubles or takes away a few bytes.
func broken(rnd *rand.Rand, src []byte) []byte {
	for range 1 + rnd.IntN(3) {
		i := rnd.IntN(len(src))
		j := min(len(src), i+rnd.IntN(12))
		switch rnd.IntN(3) {
		case 0:
			src[i] = "0123456789-. MLHVCQAZ\"<>"[rnd.IntN(24)]
		case 1:
			src = append(bytes.Clone(src[:i]), src[j:]...)
		default:
			src = append(bytes.Clone(src[:j]), src[i:]...)
		}
	}
	return src
}

func measured(t *testing.T, d *Drawing, src []byte) {
	t.Helper()
	for _, p := range d.Pieces {
		for _, s := range p.Sizes {
			if a := s.Area(); !(s.signed() > 0) || a != a {
				t.Fatalf("area %v:\n%s", a, src)
			}
			s.Symmetric()
			Same(s.Outline, s.Outline)
			for i, e := range s.Edges {
				if l, turned := e.Length(), s.Corner(i); !(l >= e.Chord()-1e-6) || !(turned >= -180 && turned <= 180) {
					t.Fatalf("%s is %v long and turns by %v:\n%s", e.Name, l, turned, src)
				}
				e.Form()
				SameEdge(e, s.Edges[0])
			}
			if ring, err := s.Containing(); err == nil && len(ring) < 3 {
				t.Fatalf("a polygon of %d corners:\n%s", len(ring), src)
			}
		}
	}
}
