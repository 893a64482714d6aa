package lay

import (
	"math"
	"strings"
	"testing"

	"seamwarden/compiler/measure"
)

const cm = 1000

// at makes a ring of coordinates in centimetres.
func at(xy ...float64) []Point {
	var r []Point
	for i := 0; i < len(xy); i += 2 {
		r = append(r, Point{int64(math.Round(xy[i] * cm)), int64(math.Round(xy[i+1] * cm))})
	}
	return r
}

func rect(w, h float64) []Point { return at(0, 0, w, 0, w, h, 0, h) }

// upright is the grain line of a piece that is drawn with its upper end up.
var upright = Point{0, 1}

func pair(n int, r []Point) Piece {
	return Piece{Name: "panel", Outline: r, Grain: upright, Drawn: n, Mirrored: n}
}

// laid finds a lay and has it checked.
func laid(t *testing.T, j Job, e Effort) Lay {
	t.Helper()
	l, err := j.Find(e)
	if err != nil {
		t.Fatal(err)
	}
	n, err := j.Check(l)
	if err != nil {
		t.Fatalf("%v: %v", l, err)
	}
	if n > l.Length || l.Length < l.Bound || l.Cloth() < j.Area() {
		t.Fatalf("it takes %d, says %d, and the limits are %d and %d", n, l.Length, l.Bound, j.Area())
	}
	return l
}

// quarter is a quarter of a ring about the origin, between the radii r and s, in n steps;
// its straight edges lie on the axes. The outer arc is drawn by its tangents.
func quarter(r, s float64, n int) []Point {
	var xy []float64
	h := math.Pi / 4 / float64(n)
	xy = append(xy, r, 0, s, 0)
	for i := range n {
		a := float64(2*i+1) * h
		xy = append(xy, s/math.Cos(h)*math.Cos(a), s/math.Cos(h)*math.Sin(a))
	}
	xy = append(xy, 0, s, 0, r)
	for i := n - 1; i > 0; i-- {
		xy = append(xy, r*math.Cos(2*float64(i)*h), r*math.Sin(2*float64(i)*h))
	}
	return at(xy...)
}

// Worked by hand; the geometry is said beside each.
func TestLaysWorkedByHand(t *testing.T) {
	wide := Cloth{Width: 140 * cm}
	nap := Cloth{Width: 140 * cm, Nap: true}
	skirt := Piece{Name: "skirt", Outline: quarter(12, 70, 40), Grain: Point{1, 0}, Either: 1, Fold: &[2]Point{{12 * cm, 0}, {70 * cm, 0}}}
	two := skirt
	two.Either = 2
	square := Piece{Name: "square", Outline: rect(30, 30), Grain: upright, Either: 1, Cut: Bias}
	onFold := Piece{Name: "back", Outline: rect(25, 60), Grain: upright, Either: 1, Fold: &[2]Point{{0, 0}, {0, 60 * cm}}}
	for _, c := range []struct {
		name   string
		cloth  Cloth
		way    Way
		pieces []Piece
		want   float64 // cm of cloth
		slack  float64
	}{
		{"a pair of 30 × 50 on the fold lies on itself", wide, LengthwiseFold, []Piece{pair(1, rect(30, 50))}, 50, 0},
		{"two pairs lie side by side in 70", wide, LengthwiseFold, []Piece{pair(2, rect(30, 50))}, 50, 0},
		{"a third pair needs another row", wide, LengthwiseFold, []Piece{pair(3, rect(30, 50))}, 100, 0},
		{"four parts side by side in 140", wide, SingleLayer, []Piece{pair(2, rect(30, 50))}, 50, 0},
		{"crosswise, three side by side, twice the length", wide, CrosswiseFold, []Piece{pair(3, rect(30, 50))}, 100, 0},
		{"crosswise, what is too wide for the lengthwise fold", wide, Best, []Piece{pair(1, rect(90, 50))}, 100, 0},
		{"the same with a nap lies in a single layer", nap, Best, []Piece{pair(1, rect(90, 50))}, 100, 0},
		{"25 on the fold and a pair of 45 fill 70", wide, LengthwiseFold, []Piece{onFold, pair(1, rect(45, 60))}, 60, 0},
		{"the same opened out in a single layer: 50 + 45 + 45", wide, SingleLayer, []Piece{onFold, pair(1, rect(45, 60))}, 60, 0},
		{"one of a kind on the fold takes both layers", wide, LengthwiseFold, []Piece{{Name: "one", Outline: rect(30, 50), Grain: upright, Drawn: 1}}, 50, 0},
		{"three alike on the fold: three places, 2 × 30 in 70", wide, LengthwiseFold, []Piece{{Name: "alike", Outline: rect(30, 50), Grain: upright, Drawn: 3}}, 100, 0},
		{"three of either hand on the fold: two places", wide, LengthwiseFold, []Piece{{Name: "either", Outline: rect(30, 50), Grain: upright, Either: 3}}, 50, 0},
		{"on the crossgrain it lies the other way", wide, SingleLayer, []Piece{{Name: "band", Outline: rect(30, 50), Grain: upright, Either: 1, Cut: Crosswise}}, 30, 0},
		// A square of side a on the bias is a·√2 long.
		{"a bias square is √2 as long", wide, SingleLayer, []Piece{square}, 30 * math.Sqrt2, 0.01},
		{"half a circle on the fold is as long as its radius", wide, LengthwiseFold, []Piece{skirt}, 70, 0.1},
		// Of two, the second begins where its straight edge meets the outer arc of the first at
		// the height of the waist: √(70² - 12²) + 70.
		{"two of them, one behind the other", nap, LengthwiseFold, []Piece{two}, math.Sqrt(70*70-12*12) + 70, 0.2},
		{"a clearance of 1 cm between, half of it at the ends", Cloth{Width: 62 * cm, Clearance: cm}, SingleLayer, []Piece{pair(1, rect(30, 50))}, 51, 0.01},
		{"a clearance that does not fit", Cloth{Width: 61 * cm, Clearance: cm}, SingleLayer, []Piece{pair(1, rect(30, 50))}, 102, 0.01},
	} {
		j := Job{Cloth: c.cloth, Pieces: c.pieces, Way: c.way}
		l, err := j.Find(Effort{Work: 60_000})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if _, err := j.Check(l); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if limit, err := j.Limit(l.Way); err != nil || limit != l.Bound || l.ClothBound() < l.Bound {
			t.Errorf("%s: limit %d and bound %d, %v", c.name, limit, l.Bound, err)
		}
		if got := float64(l.Cloth()) / cm; got < c.want-1e-3 && c.slack == 0 || math.Abs(got-c.want) > c.slack+1e-3 {
			t.Errorf("%s: %.3f cm, want %.3f", c.name, got, c.want)
		}
	}
}

func TestALayThatCannotBeIsSaid(t *testing.T) {
	for _, c := range []struct {
		want string
		job  Job
	}{
		{"nothing to lay", Job{Cloth: Cloth{Width: 10}}},
		{"nap of the two layers", Job{Cloth{Width: 140 * cm, Nap: true}, []Piece{pair(1, rect(3, 3))}, CrosswiseFold}},
		{"90.0 cm wide as it lies, and the cloth lies 70.0 cm wide", Job{Cloth{Width: 140 * cm}, []Piece{pair(1, rect(90, 3))}, LengthwiseFold}},
		{"no grain line", Job{Cloth{Width: 140 * cm}, []Piece{{Number: "3", Name: "cuff", Outline: rect(9, 3), Either: 1}}, Best}},
		{"piece 3 (cuff): it is not cut", Job{Cloth{Width: 140 * cm}, []Piece{{Number: "3", Name: "cuff", Outline: rect(9, 3), Grain: upright}}, Best}},
		{"no area", Job{Cloth{Width: 140 * cm}, []Piece{pair(1, at(0, 0, 1, 1))}, Best}},
		{"both sides of its fold", Job{Cloth{Width: 140 * cm}, []Piece{{Outline: rect(9, 3), Grain: upright, Either: 1, Fold: &[2]Point{{cm, 0}, {cm, 3 * cm}}}}, Best}},
		{"no edge on the fold", Job{Cloth{Width: 140 * cm}, []Piece{{Outline: at(0, 0, 3, 3, -3, 3), Grain: upright, Either: 1, Fold: &[2]Point{{0, 0}, {3 * cm, 0}}}}, Best}},
		{"has no hand", Job{Cloth{Width: 140 * cm}, []Piece{{Outline: rect(9, 3), Grain: upright, Drawn: 1, Fold: &[2]Point{{0, 0}, {0, 3 * cm}}}}, Best}},
	} {
		if _, err := c.job.Find(Effort{Work: 1000}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}

// By hand: an eighth of a yard is 36 in ÷ 8 = 114.3 mm (the inch of 25.4 mm, international
// yard and pound agreement, 1959).
func TestLengthsAreRoundedUpAsClothIsSold(t *testing.T) {
	for _, c := range []struct {
		length        int64
		shrinks       Shrinkage
		eighth, tenth int64
	}{
		{100 * cm, 0, 9, 10},
		{100*cm + 1, 0, 9, 11},
		{11430 * 8, 0, 8, 10},
		{11430*8 + 1, 0, 9, 10},
		{97 * cm, 30, 9, 10}, // 97 cm ÷ 0.97 = 100 cm
		{97*cm + 1, 30, 9, 11},
	} {
		n, err := c.shrinks.Need(c.length)
		if err != nil || measure.YardsUp(n) != Measure(11430*c.eighth) || measure.MetresUp(n) != Measure(10000*c.tenth) {
			t.Errorf("%d with %d in 1000: %v, %v, %v, %v", c.length, c.shrinks, n, measure.YardsUp(n), measure.MetresUp(n), err)
		}
	}
	for _, s := range []Shrinkage{-1, 1000} {
		if _, err := s.Need(1); err == nil {
			t.Errorf("a shrinkage of %d is taken", s)
		}
	}
}

// Of three alike on two layers each place gives one too many; of a pair and one more, the
// last does; on the fold and in a single layer none.
func TestOneLayerOnlyIsSaid(t *testing.T) {
	pieces := []Piece{
		{Name: "alike", Outline: rect(30, 50), Grain: upright, Drawn: 3},
		{Name: "three", Outline: rect(20, 40), Grain: upright, Drawn: 2, Mirrored: 1},
		{Name: "back", Outline: rect(25, 60), Grain: upright, Either: 1, Fold: &[2]Point{{0, 0}, {0, 60 * cm}}},
	}
	for way, want := range map[Way]int{LengthwiseFold: 4, SingleLayer: 0, CrosswiseFold: 5} {
		j := Job{Cloth{Width: 140 * cm}, pieces, way}
		n := 0
		for _, spare := range j.Spare(laid(t, j, Effort{Work: 10_000})) {
			if spare {
				n++
			}
		}
		if n != want {
			t.Errorf("%s: %d places of one layer only, want %d", way, n, want)
		}
	}
}

// Each demand of the trade is seen when it alone is not kept: the places are those of a
// sound lay, and the piece or the cloth is then said to be another.
func TestEachDemandOfTheTradeIsChecked(t *testing.T) {
	half := &[2]Point{{0, 0}, {0, 60 * cm}}
	back := Piece{Name: "back", Outline: at(0, 0, 25, 0, 20, 60, 0, 60), Grain: upright, Either: 1, Fold: half}
	strip := Piece{Name: "strip", Outline: rect(4, 20), Grain: upright, Drawn: 1, Mirrored: 1, Cut: Bias}
	side := Piece{Name: "side", Outline: at(0, 0, 20, 0, 10, 40, 0, 40), Grain: upright, Drawn: 1, Mirrored: 1}
	for _, c := range []struct {
		want  string
		way   Way
		spoil func(j *Job, l *Lay)
	}{
		{"", LengthwiseFold, func(*Job, *Lay) {}},
		{"", SingleLayer, func(*Job, *Lay) {}},
		{"as it may not", SingleLayer, func(j *Job, l *Lay) { j.Cloth.Nap = true; turnAll(l, 180) }},
		{"as it may not", LengthwiseFold, func(j *Job, l *Lay) { l.Places[0].Turn, l.Places[0].Mirrored = 180, true }},
		{"as it may not", SingleLayer, func(j *Job, l *Lay) { turnAll(l, 45) }},
		{"does not lie on the fold", LengthwiseFold, func(j *Job, l *Lay) { l.Places[0].At.Y++; l.Places[0].At.X += 900 * cm; l.Length += 900 * cm }},
		{"not all of its parts", SingleLayer, func(j *Job, l *Lay) { l.Places[len(l.Places)-1].Mirrored = !l.Places[len(l.Places)-1].Mirrored }},
		{"not all of its parts", LengthwiseFold, func(j *Job, l *Lay) { j.Pieces[2].Mirrored = 2 }},
		{"more of its parts", LengthwiseFold, func(j *Job, l *Lay) {
			j.Pieces[2].Drawn, j.Pieces[2].Mirrored = 0, 0
			j.Pieces[2].Either = 1
			l.Places = append(l.Places, l.Places[2])
		}},
		{"is to lie otherwise", LengthwiseFold, func(j *Job, l *Lay) { j.Way = SingleLayer }},
		{"has a nap and lies folded crosswise", LengthwiseFold, func(j *Job, l *Lay) { j.Cloth.Nap, j.Way, l.Way = true, Best, CrosswiseFold }},
		{"reaches beyond an end of the cloth", SingleLayer, func(j *Job, l *Lay) { l.Length-- }},
		{"overlap", SingleLayer, func(j *Job, l *Lay) { l.Places[1].At = l.Places[2].At }},
		{"farther off than any cloth", SingleLayer, func(j *Job, l *Lay) { l.Places[1].At.X = 1 << 62 }},
	} {
		j := Job{Cloth{Width: 140 * cm}, []Piece{back, strip, side}, c.way}
		l := laid(t, j, Effort{Work: 20_000})
		c.spoil(&j, &l)
		if _, err := j.Check(l); (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}

func turnAll(l *Lay, by int) {
	for i := range l.Places {
		l.Places[i].Turn = by
	}
}
