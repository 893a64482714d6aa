package check_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"seamwarden/compiler"
	"seamwarden/dsl/finding"
)

// TestTrial breaks right patterns as a tired person would, in ways that no sample has,
// and asks for one finding with these words.
func TestTrial(t *testing.T) {
	for _, x := range []struct{ file, from, to, rule, says string }{
		{"double-yoke-shirt", "to front.left at pocket-place", "to front at pocket-place", "more-parts-than-places", "The pocket is cut once, and this puts it on the left and on the right front."},
		{"double-yoke-shirt", "    edgestitch cuff.inner.bottom\n", "", "pressed-under-never-stitched", "The bottom edge of the cuff is pressed under and never stitched."},
		{"buttoned-girls-dress", "to bodice-back.left at button-place", "to bodice-back.right at button-place", "fastening-on-itself", "buttonholes and buttons both go on the right bodice back."},
		{"buttoned-girls-dress", "    slipstitch bodice-front.lining.waist, bodice-back.lining.waist to waist by hand\n", "", "pressed-under-never-stitched", "The waist edge of the bodice front and the waist edge of the bodice back are pressed under and never stitched."},
		{"fly-trousers", "    attach zip.left to fly-facing\n", "", "zip-half-sewn-in", "its right side is sewn in, and no step sews in the left one."},
		{"fly-trousers", "joins front.left.fly to fly-facing", "joins front.right.fly to fly-facing", "edge-in-two-seams", "The fly edge of the right front is in two seams"},
		{"webbing-rucksack", "attach snap.post to body.outer.front at", "attach snap.post to flap.inner at", "fastening-on-itself", "both halves go on the mark snap place."},
		{"webbing-rucksack", "    slipstitch gap by hand\n", "", "opening-never-closed", "The opening gap is never closed."},
	} {
		t.Run(x.rule+" in "+x.file, func(t *testing.T) {
			src, err := os.ReadFile(filepath.Join("../../testdata/right", x.file+".seam"))
			if err != nil {
				t.Fatal(err)
			}
			broken := strings.Replace(string(src), x.from, x.to, 1)
			if broken == string(src) {
				t.Fatalf("there is no %q to break", x.from)
			}
			r, err := compiler.Compile(mapFS(map[string]string{compiler.Root: broken}))
			if err != nil {
				t.Fatal(err)
			}
			var said []string
			for _, f := range r.Findings {
				if f.Severity == finding.Error || f.Severity == finding.Warning {
					said = append(said, f.Rule+": "+f.Headline)
				}
			}
			if len(said) != 1 || !strings.HasPrefix(said[0], x.rule+": ") || !strings.Contains(said[0], x.says) {
				t.Errorf("found:\n%s", strings.Join(said, "\n"))
			}
		})
	}
}
