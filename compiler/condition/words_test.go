package condition

import "testing"

// skirt is a wrap skirt of the sample maker: four views, three sizes of
// decision, and an option that only two views offer.
type skirt struct {
	*Space
	view, pockets, lining, band, size VarID
}

func newSkirt() skirt {
	s := skirt{Space: NewSpace()}
	s.view = s.AddVar(View, "view", "A", "B", "C", "D")
	s.pockets = s.AddVar(Option, "pockets")
	s.lining = s.AddVar(Option, "lining")
	s.band = s.AddVar(Choice, "band", "turned", "bound")
	s.size = s.AddVar(Size, "size", "8", "10", "12", "14", "16")
	return s
}

func (s skirt) names() Names {
	return Names{
		Option: func(v VarID) string {
			return map[VarID]string{s.pockets: "side pockets", s.lining: "a lining"}[v]
		},
		Choice: func(_ VarID, value int) string {
			return []string{"the band is turned under", "the band is bound"}[value]
		},
		Chosen: func(_ VarID, value int) string {
			return []string{"band turned under", "band bound with bias tape"}[value]
		},
	}
}

func TestWords(t *testing.T) {
	s := newSkirt()
	with, without := s.Is(s.pockets, With), s.Is(s.pockets, Without)
	lined, bound := s.Is(s.lining, With), s.Is(s.band, 1)
	viewB := s.Is(s.view, 1)
	for _, c := range []struct {
		bad  Cond
		want string
	}{
		{True, ""},
		{False, "in no combination"},
		{viewB, "in view B"},
		{s.In(s.view, 0, 2), "in views A and C"},
		{s.Not(s.Is(s.view, 0)), "in every view but A"},
		{with, "with side pockets"},
		{without, "without side pockets"},
		{s.And(with, lined), "with side pockets and a lining"},
		{s.And(without, s.Not(lined)), "without side pockets or a lining"},
		{s.And(without, lined), "with a lining and without side pockets"},
		{s.And(viewB, with), "in view B with side pockets"},
		{s.And(viewB, without), "in view B without side pockets"},
		{bound, "when the band is bound"},
		{s.And(viewB, bound), "in view B when the band is bound"},
		{s.Is(s.size, 3), "in size 14"},
		{s.In(s.size, 0, 1, 2), "in sizes 8 to 12"},
		{s.In(s.size, 0, 1), "in sizes 8 and 10"},
		{s.In(s.size, 1, 2, 3, 4), "in sizes 10 to 16"},
		{s.In(s.size, 0, 1, 2, 4), "in every size but 14"},
		{s.In(s.size, 0, 2, 4), "in sizes 8, 12 and 16"},
		{s.All(viewB, with, bound, s.In(s.size, 0, 1, 2)), "in view B with side pockets, in sizes 8 to 12, when the band is bound"},
		{s.Or(viewB, with), "in view B; or with side pockets"},
		{s.Any(viewB, with, bound), "in view B; or when the band is bound; or with side pockets"},
		{s.Or(s.And(viewB, with), s.And(s.Is(s.view, 2), without)), "in view B with side pockets; or in view C without side pockets"},
	} {
		if got := s.Words(s.Smallest(c.bad, True), s.names()); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Views that do not offer an option are not named because they do no harm.
func TestWordsLeaveOutWhatIsNotValid(t *testing.T) {
	s := newSkirt()
	offered := s.Or(s.In(s.view, 1, 2), s.Is(s.pockets, Without)) // in B and C only
	d := s.Smallest(s.And(s.Is(s.pockets, With), s.Not(s.Is(s.view, 2))), offered)
	if got, want := s.Words(d, s.names()), "in view B with side pockets"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if d.Count.Int64() != 1 || d.Of.Int64() != 6 {
		t.Errorf("in %v of %v combinations, want 1 of 6: four views without pockets, two with", d.Count, d.Of)
	}
}

func TestWordsCountManyAlternatives(t *testing.T) {
	s := newSkirt()
	// Odd: an odd number of options and of the choice. Eight combinations.
	odd := s.Not(s.Is(s.pockets, With))
	odd = s.Not(odd)
	for _, c := range []Cond{s.Is(s.lining, With), s.Is(s.band, 1)} {
		odd = s.Or(s.Diff(odd, c), s.Diff(c, odd))
	}
	d := s.Smallest(odd, True)
	want := "in 4 of 8 combinations, for example with a lining and without side pockets, band turned under"
	if got := s.Words(d, s.names()); got != want || !d.Exact || len(d.Cubes) != 4 {
		t.Errorf("%q from %d cubes, want %q", got, len(d.Cubes), want)
	}
}

func TestWordsForOneGarment(t *testing.T) {
	s := newSkirt()
	a := assign(s.Space, s.view, 1, s.pockets, With, s.band, 1)
	a[s.lining] = -1
	for withSize, want := range map[bool]string{
		true:  "view B, with side pockets, band bound with bias tape, size 8",
		false: "view B, with side pockets, band bound with bias tape",
	} {
		if got := s.WordsFor(a, s.names(), withSize); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got, want := s.WordsFor(Assignment{2, Without}, Names{}, true), "view C, without pockets"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestWordsWithoutNames(t *testing.T) {
	s := NewSpace()
	band := s.AddVar(Choice, "band", "turned", "bound", "faced", "lined")
	size := s.AddVar(Size, "size", "", "")
	for _, c := range []struct {
		bad  Cond
		want string
	}{
		{s.Is(band, 1), "when band is bound"},
		{s.In(band, 0, 1), "when band is turned or band is bound"},
		{s.In(band, 0, 1, 3), "unless band is faced"},
		{s.Is(size, 1), "in size 2"},
	} {
		if got := s.Words(s.Smallest(c.bad, True), Names{}); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
