package assembly_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"seamwarden/compiler"
	"seamwarden/compiler/assembly"
)

// A sheet has one run of open edges; a tube has two, and what is sewn all round has
// none. Every maker can try it with a strip of paper and tape.
func TestSheetsTubesAndBags(t *testing.T) {
	const head = `pattern "Tube" { allow 1cm; finish seams together with zigzag, press toward back }
fabric main "Main fabric" { widths 110cm }
`
	for _, c := range []struct{ name, source, want string }{
		{"one piece sewn to itself", `
piece tube 1 "Tube" { edges top, right-end, foot, left-end; cut 1 main right side up }
seam back joins tube.right-end to tube.left-end
step sew "Sew" { sew back }`, `
tube
  (tube.top)
  (tube.foot)`},
		{"two panels, one seam", `
piece panel 1 "Panel" { edges top, side, foot, middle; cut 2 main mirrored }
seam middle joins panel.middle to panel.middle
seam side joins panel.side to panel.side
step sew "Sew" { sew middle }`, `
panel.left panel.right
  (panel.left.foot panel.left.side panel.left.top panel.right.foot panel.right.side panel.right.top)`},
		{"two panels, two seams", `
piece panel 1 "Panel" { edges top, side, foot, middle; cut 2 main mirrored }
seam middle joins panel.middle to panel.middle
seam side joins panel.side to panel.side
step sew "Sew" { sew middle; sew side }`, `
panel.left panel.right
  (panel.left.top panel.right.top)
  (panel.left.foot panel.right.foot)`},
		{"cut on the fold and sewn behind", `
piece tube 1 "Tube" { edges top, side, foot, centre; cut 1 main on fold centre }
seam back joins tube.side to tube.side
step sew "Sew" { sew back; hem tube.foot turning 1cm }`, `
tube
  (tube.top)
  (tube.foot:hemmed)`},
		{"a bag, closed below", `
piece front 1 "Front" { edges top, side, foot, centre; cut 1 main on fold centre }
piece back 2 "Back" { edges top, side, foot, centre; cut 1 main on fold centre }
seam side joins front.side to back.side
seam foot joins front.foot to back.foot
step sew "Sew" { sew side; sew foot }`, `
front back
  (back.top front.top)`},
		{"a cushion", `
piece front 1 "Front" { edges top, side, foot, centre; cut 1 main on fold centre }
piece back 2 "Back" { edges top, side, foot, centre; cut 1 main on fold centre }
seam side joins front.side to back.side
seam foot joins front.foot to back.foot
seam top joins front.top to back.top
step sew "Sew" { sew side; sew foot; sew top leaving 8cm open as gap }`, `
front back
opening: gap`},
		{"a band set on a tube in the round", `
piece tube 1 "Tube" { edges top, side, foot, centre; cut 1 main on fold centre }
piece band 2 "Band" { edges upper, tip, lower, middle; cut 1 main on fold middle }
seam back joins tube.side to tube.side
seam ends joins band.tip to band.tip
seam round joins band.lower to tube.top
step sew "Sew" { sew back; sew ends; sew round }`, `
tube band
  (tube.foot)
  (band.upper)`},
		{"the same band set on flat, and closed with the tube", `
piece tube 1 "Tube" { edges top, side, foot, centre; cut 1 main on fold centre }
piece band 2 "Band" { edges upper, tip, lower, middle; cut 1 main on fold middle }
seam back joins tube.side to tube.side
seam ends joins band.tip to band.tip
seam round joins band.lower to tube.top
step sew "Sew" { sew round; sew back; sew ends }`, `
tube band
  (tube.foot)
  (band.upper)`},
		{"a slit above the hem", `
piece panel 1 "Panel" { edges top, side, foot, middle; cut 2 main mirrored; marks slit-top on side }
seam middle joins panel.middle to panel.middle
seam side joins panel.side to panel.side from top to slit-top
step sew "Sew" { sew middle; sew side; hem panel.side from slit-top to foot turning 1cm }`, `
panel.left panel.right
  (panel.left.foot panel.left.side[foot,slit-top]:hemmed panel.right.foot panel.right.side[foot,slit-top]:hemmed)
  (panel.left.top panel.right.top)`},
		{"half a seam", `
piece panel 1 "Panel" { edges top, side, foot, middle; cut 2 main mirrored; marks half on side }
seam side joins panel.side to panel.side
step one "Sew" { sew side from top to half }
step two "Sew on" { sew side from half to foot }`, `
panel.left panel.right
  (panel.left.foot panel.left.middle panel.left.top panel.right.foot panel.right.middle panel.right.top)`},
		{"neighbours tell how two edges run where nothing else does", `
piece one 1 "One" { symmetric; edges a, b, c, d; cut 1 main }
piece two 2 "Two" { symmetric; edges p, q, r, s; cut 1 main }
seam first joins one.a to two.p
seam second joins one.b to two.q
step sew "Sew" { sew first; sew second }`, `
one two
  (one.c one.d two.r two.s)`},
		{"and so do names, where a part may lie either way round", `
piece front 1 "Front" { edges top, side, foot, centre; cut 1 main on fold centre }
piece back 2 "Back" { edges top, side, foot, centre; cut 1 main on fold centre }
seam side joins front.side to back.side
step sew "Sew" { sew side }`, `
front back
  (back.top front.top)
  (back.foot front.foot)`},
	} {
		p := compiled(t, head+c.source)
		s := assembly.After(p, garment(t, p, compiler.Choice{}), p.Steps()[len(p.Steps())-1])
		s.Unpressed, s.Unfinished = nil, nil
		if got := sortedRounds(told(s)); got != sortedRounds(strings.TrimSpace(c.want)) {
			t.Errorf("%s:\n%s\nwant:\n%s", c.name, got, strings.TrimSpace(c.want))
		}
	}
}

// What becomes of an edge, by what is done to it, one after the other.
func TestRims(t *testing.T) {
	for _, c := range []struct{ steps, want string }{
		{"", "cloth.a"},
		{"finish cloth.a with zigzag", "cloth.a:finished"},
		{"finish cloth.a with zigzag; press under cloth.a by 1cm", "cloth.a:pressed"},
		{"press under cloth.a by 1cm; finish cloth.a with zigzag", "cloth.a:pressed"},
		{"press under cloth.a by 1cm; topstitch cloth.a 5mm", "cloth.a:stitched"},
		{"topstitch cloth.a 5mm", "cloth.a"},
		{"hem cloth.a turning 1cm; edgestitch cloth.a", "cloth.a:hemmed"},
		{"bind cloth.a with tape; topstitch cloth.a 2mm", "cloth.a:bound"},
		{"staystitch cloth.a", "cloth.a"},
		{"press under cloth.a by 1cm; slipstitch cloth.a", "cloth.a:stitched"},
	} {
		p := compiled(t, `pattern "Cloth" { allow 1cm }
fabric main "Main fabric" { widths 110cm }
tape tape "Tape" { length 2m }
piece cloth 1 "Cloth" { edges a, b, c; raw b; cut 1 main right side up }
step all "All" { mark cloth.b; `+c.steps+` }`)
		s := assembly.After(p, garment(t, p, compiler.Choice{}), p.Steps()[0])
		if len(s.Assemblies) == 0 {
			if len(s.Loose) != 1 || strings.Contains(c.want, "hemmed") || strings.Contains(c.want, "bound") || strings.Contains(c.want, "stitched") {
				t.Errorf("%s: nothing is sewn:\n%s", c.steps, told(s))
			}
			continue
		}
		if got := strings.Join(sortedEdges(s.Assemblies[0].Rounds[0]), " "); got != c.want+" cloth.b:left-raw cloth.c" {
			t.Errorf("%s: %s, want %s", c.steps, got, c.want)
		}
	}
}

// sortedRounds puts the rounds of one assembly in alphabetical order.
func sortedRounds(s string) string {
	lines := strings.Split(s, "\n")
	for range lines {
		for n := 1; n < len(lines); n++ {
			if strings.HasPrefix(lines[n-1], "  ") && strings.HasPrefix(lines[n], "  ") && lines[n] < lines[n-1] {
				lines[n-1], lines[n] = lines[n], lines[n-1]
			}
		}
	}
	return strings.Join(lines, "\n")
}

func TestHalfASeamIsStarted(t *testing.T) {
	p := compiled(t, `pattern "Half" { allow 1cm }
fabric main "Main fabric" { widths 110cm }
piece panel 1 "Panel" { edges top, side, foot, middle; cut 2 main mirrored; marks half on side }
seam side joins panel.side to panel.side
step one "Sew" { sew side from top to half }
step two "Sew on" { sew side from half to foot; press side open }`)
	a := garment(t, p, compiler.Choice{})
	if got := told(assembly.After(p, a, step(t, p, "one"))); !strings.HasSuffix(got, "started: side") || strings.Contains(got, "unpressed") {
		t.Errorf("after the first half:\n%s", got)
	}
	if got := told(assembly.After(p, a, step(t, p, "two"))); strings.Contains(got, "started") {
		t.Errorf("after the second half:\n%s", got)
	}
}

// Panels sewn side to side stay one sheet until the last seam closes the ring,
// in whichever order, and whichever side of each was up when it was cut.
func TestRingsOfPanels(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		n := 2 + r.IntN(5)
		var b strings.Builder
		b.WriteString("pattern \"Ring\" { allow 1cm }\nfabric main \"Main fabric\" { widths 110cm }\n")
		up := make([]bool, n)
		for i := range n {
			up[i] = r.IntN(2) == 0
			side, edges := "right side up", "top, after, foot, before"
			if !up[i] {
				side, edges = "wrong side up", "top, before, foot, after"
			}
			fmt.Fprintf(&b, "piece p%d %d \"Panel %d\" { edges %s; cut 1 main %s }\n", i, i+1, i+1, edges, side)
		}
		for i := range n {
			fmt.Fprintf(&b, "seam s%d joins p%d.after to p%d.before\n", i, i, (i+1)%n)
		}
		order := r.Perm(n)
		for k, i := range order {
			fmt.Fprintf(&b, "step t%d \"Sew %d\" { sew s%d }\n", k, k, i)
		}
		p := compiled(t, b.String())
		a := garment(t, p, compiler.Choice{})
		for k, s := range p.Steps() {
			seen := assembly.After(p, a, s)
			want := 1
			if k == n-1 {
				want = 2
			}
			for _, x := range seen.Assemblies {
				edges := 0
				for _, round := range x.Rounds {
					edges += len(round.Edges)
					if !round.Closed {
						t.Errorf("a run of open edges ends:\n%s\n%s", b.String(), told(seen))
					}
				}
				if len(x.Rounds) != want || edges != 4*len(x.Parts)-2*sewnIn(order[:k+1], x, n) {
					t.Fatalf("after %d of %d seams:\n%s\n%s", k+1, n, b.String(), told(seen))
				}
			}
		}
	}
}

// sewnIn counts the seams that lie in an assembly.
func sewnIn(done []int, a assembly.Assembly, n int) (seams int) {
	in := map[string]bool{}
	for _, i := range a.Parts {
		in[i.Piece.ID] = true
	}
	for _, i := range done {
		if in[fmt.Sprintf("p%d", i)] && in[fmt.Sprintf("p%d", (i+1)%n)] {
			seams++
		}
	}
	return
}
