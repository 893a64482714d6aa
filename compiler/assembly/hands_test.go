package assembly_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/model"
)

// joint is a seam of the oracle: two seam edges, and which of their ends meet.
type joint struct {
	a, b       *paper
	ea, eb     int
	enda, endb int    // -1 the beginning of the edge, +1 its end
	side       string // of a pair or fold that is sewn to a single; "" for both sides
	byName     bool   // only a name tells which ends meet
	guard      guard  // where the seam is there
}

// workshop is a random small pattern with its oracle.
type workshop struct {
	papers  []*paper
	joints  []*joint
	guarded bool
}

func newWorkshop(r *rand.Rand, names bool) *workshop {
	w := &workshop{}
	for n := range 2 + r.IntN(4) {
		w.papers = append(w.papers, newPaper(r, n))
	}
	for range 1 + r.IntN(2*len(w.papers)) {
		w.join(r, names)
	}
	w.papers = slices.DeleteFunc(w.papers, func(p *paper) bool { return p.seams == 0 })
	for _, p := range w.papers {
		p.shape = scrap(r, len(p.edges()))
	}
	return w
}

func newPaper(r *rand.Rand, n int) *paper {
	p := &paper{name: fmt.Sprint("piece-", n), kind: []string{"pair", "fold", "single"}[r.IntN(3)], in: r.IntN(3) == 0, renamed: map[int]string{}}
	switch p.kind {
	case "pair":
		p.drawn = []string{"left", "right", ""}[r.IntN(3)]
	case "fold":
		p.prefix, p.end = []string{"spine", "top"}, []string{"bottom"}
	default:
		p.up = []string{"right", "wrong", ""}[r.IntN(3)]
	}
	return p
}

// join sews two random pieces together at new edges.
func (w *workshop) join(r *rand.Rand, names bool) {
	a, b := w.papers[r.IntN(len(w.papers))], w.papers[r.IntN(len(w.papers))]
	if a == b {
		return
	}
	end := func() int { return 2*r.IntN(2) - 1 }
	j := &joint{a: a, b: b, ea: a.seams, eb: b.seams, enda: end(), endb: end(), byName: names}
	if (a.kind == "single") != (b.kind == "single") {
		j.side = []string{"left", "right"}[r.IntN(2)]
	}
	a.seams++
	b.seams++
	if j.byName {
		meet := fmt.Sprint("meet-", len(w.joints))
		a.renamed[a.at(j.ea)+j.enda], b.renamed[b.at(j.eb)+j.endb] = meet, meet
	}
	w.joints = append(w.joints, j)
}

// source writes the pattern. Where names do not tell which ends meet, a symmetric
// band is sewn along the two edges that follow each other there.
func (w *workshop) source() string {
	var b strings.Builder
	b.WriteString("pattern \"Hands\" { allow 1cm }\n\nfabric main \"Main\" { widths 140cm }\n\n")
	for _, p := range w.papers {
		b.WriteString(p.source())
	}
	for n, j := range w.joints {
		name := func(p *paper, k int) string {
			side := ""
			if j.side != "" && p.kind != "single" {
				side = "." + j.side
			}
			return p.name + side + "." + p.edges()[k]
		}
		when := ""
		if j.guard.text != "" {
			when = " when " + j.guard.text
		}
		fmt.Fprintf(&b, "seam seam-%d joins %s to %s%s\n\n", n, name(j.a, j.a.at(j.ea)), name(j.b, j.b.at(j.eb)), when)
		if j.byName {
			continue
		}
		cut := "cut 2 main mirrored"
		if j.side != "" || j.a.kind == "single" {
			cut = "cut 1 main"
		}
		fmt.Fprintf(&b, "piece band-%d {\n  symmetric\n  edges base, end, top, other-end\n  %s\n}\n\n", n, cut)
		fmt.Fprintf(&b, "seam tell-%d joins band-%d.base to %s, %s%s\n\n", n, n, name(j.a, j.a.at(j.ea)+j.enda), name(j.b, j.b.at(j.eb)+j.endb), when)
	}
	for n := 0; n < guardOptions && w.guarded; n++ {
		fmt.Fprintf(&b, "option %s \"Option\"\n\n", optionName(n))
	}
	return b.String()
}

// fits lays the parts of every seam on each other, if the pieces lie as said.
func (w *workshop) fits(lies map[*paper]bool, taken []bool) bool {
	for _, j := range w.joints {
		if w.guarded && !j.guard.holds(taken) {
			continue
		}
		sides := []string{"left", "right"}
		switch {
		case j.side != "":
			sides = []string{j.side}
		case j.a.kind == "single":
			sides = []string{""}
		}
		for _, side := range sides {
			meet := sewn(j.a.faceUp(side, lies[j.a]), j.a.at(j.ea), j.b.faceUp(side, lies[j.b]), j.b.at(j.eb))
			if meet != (j.enda == j.endb) {
				return false
			}
		}
	}
	return true
}

// ways lists every way in which the pieces may lie so that all seams fit.
func (w *workshop) ways(taken []bool) (all []map[*paper]bool) {
	var open []*paper
	for _, p := range w.papers {
		if p.open() {
			open = append(open, p)
		}
	}
	for n := range 1 << len(open) {
		lies := map[*paper]bool{}
		for k, p := range open {
			lies[p] = n>>k&1 == 1
		}
		if w.fits(lies, taken) {
			all = append(all, lies)
		}
	}
	return
}

// TestHandsAgreeWithPaper compares the solved signs with paper pieces: a clash is
// found exactly where no way of laying them fits, and a side is deduced exactly
// where one way alone does.
func TestHandsAgreeWithPaper(t *testing.T) {
	clashes, deduced, left := 0, 0, 0
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 7))
		w := newWorkshop(r, seed%4 == 3)
		p := build(t, w.source())
		ways, x := w.ways(nil), assembly.Hands(p)
		if (len(ways) == 0) != (len(x.Clashes) > 0) {
			t.Fatalf("seed %d: paper fits in %d ways, and %d clashes are found\n%s", seed, len(ways), len(x.Clashes), w.source())
		}
		if len(x.Unknown) > 0 {
			t.Fatalf("seed %d: the ends of %s are said to be unknown\n%s", seed, x.Unknown[0].ID, w.source())
		}
		for _, c := range x.Clashes {
			if c.Sure != (seed%4 != 3) {
				t.Fatalf("seed %d: sure is %v", seed, c.Sure)
			}
		}
		if len(ways) == 0 {
			clashes++
			continue
		}
		for _, q := range w.papers {
			if q.kind == "single" && q.up == "" && seed%4 != 3 {
				d, o := w.deduced(t, p, q, ways)
				deduced, left = deduced+d, left+o
			}
		}
	}
	t.Logf("600 patterns: %d contradict themselves; %d sides deduced, %d left open", clashes, deduced, left)
	if clashes < 100 || deduced < 20 || left < 20 {
		t.Error("too few of a kind: the test tells little")
	}
}

// deduced compares the side of one single cut.
func (w *workshop) deduced(t *testing.T, p *model.Pattern, q *paper, ways []map[*paper]bool) (deduced, open int) {
	t.Helper()
	up, down := false, false
	for _, lies := range ways {
		up, down = up || lies[q], down || !lies[q]
	}
	want := model.NotSaid
	switch {
	case up && !down:
		want = model.FaceUp
	case down && !up:
		want = model.FaceDown
	}
	for _, x := range p.Pieces {
		if x.ID == q.name && x.Cuts[0].Lay.Up != want {
			t.Fatalf("the side of %s is %d, and by paper %d\n%s", q.name, x.Cuts[0].Lay.Up, want, w.source())
		}
	}
	if want == model.NotSaid {
		return 0, 1
	}
	return 1, 0
}

// TestHandsAgreeInEveryGarment does the same with seams that are there in some
// garments only, and asks for each garment by itself.
func TestHandsAgreeInEveryGarment(t *testing.T) {
	found, clean := 0, 0
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 11))
		w := newWorkshop(r, false)
		w.guarded = true
		for _, j := range w.joints {
			j.guard = newGuard(r)
		}
		p := build(t, w.source())
		x := assembly.Hands(p)
		for n := range 1 << guardOptions {
			taken := make([]bool, guardOptions)
			for k := range taken {
				taken[k] = n>>k&1 == 1
			}
			clash := false
			for _, c := range x.Clashes {
				clash = clash || p.Space.Eval(c.Cond, assignment(p, taken))
			}
			if clash != (len(w.ways(taken)) == 0) {
				t.Fatalf("seed %d, options %v: clash is %v, and paper fits in %d ways\n%s", seed, taken, clash, len(w.ways(taken)), w.source())
			}
			if clash {
				found++
			} else {
				clean++
			}
		}
	}
	t.Logf("%d garments with a clash, %d without", found, clean)
	if found < 200 || clean < 200 {
		t.Error("too few of a kind: the test tells little")
	}
}

// TestRightSidesTogether holds the rule of signs against paper: with right sides
// together d(P)·hand(P)·d(Q)·hand(Q) = -1. d is +1 if the edge runs clockwise as
// drawn from the end at which both begin.
func TestRightSidesTogether(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		p, q := scrap(r, 3+r.IntN(6)), scrap(r, 3+r.IntN(6))
		j, k := r.IntN(len(p)), r.IntN(len(q))
		handP, handQ := 1-2*r.IntN(2), 1-2*r.IntN(2)
		a, b := p, q
		if handP < 0 {
			a = a.turnedOver()
		}
		if handQ < 0 {
			b = b.turnedOver()
		}
		dQ := -1
		if sewn(a, j, b, k) {
			dQ = 1 // from the same end both run as drawn
		}
		if handP*dQ*handQ != -1 {
			t.Fatalf("hands %d and %d: the second runs %d", handP, handQ, dQ)
		}
	}
}

// TestHalvesOfAFold looks at the two halves of a part that is cut on the fold: each
// is the mirror image of the other, so that they are of opposite hands.
func TestHalvesOfAFold(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		half, other := scrap(r, 5), scrap(r, 5)
		left, right := sewn(half, 2, other, 3), sewn(half.unfolded(0), 2, other, 3)
		if left == right {
			t.Fatal("both halves go to the same edge the same way round")
		}
	}
}

// TestWornFaceIn looks at a facing that is drawn on the shape of its shell, as both
// are seen on the wearer. It lies on the shell, so that their drawn edges run the
// same way; sewn right sides together with all its ends at their place it must be of
// the other hand. Worn face out, as an ordinary neighbour, it would be of the same.
func TestWornFaceIn(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		shape := scrap(r, 6)
		shell := &paper{kind: "pair", drawn: "right", shape: shape}
		facing := &paper{kind: "pair", drawn: "right", in: true, shape: shape}
		for _, s := range []string{"left", "right"} {
			for edge := range shape {
				if !sewn(shell.faceUp(s, true), edge, facing.faceUp(s, true), edge) {
					t.Fatal("a facing that is worn face in does not lie on its shell")
				}
				facing.in = false
				if sewn(shell.faceUp(s, true), edge, facing.faceUp(s, true), edge) {
					t.Fatal("a facing that is worn face out lies on its shell")
				}
				facing.in = true
			}
		}
	}
}
