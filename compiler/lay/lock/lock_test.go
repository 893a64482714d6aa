package lock

import (
	"bytes"
	"strings"
	"testing"

	"seamwarden/compiler/lay"
	"seamwarden/dsl/finding"
)

const cm = 1000

func rect(w, h int64) []lay.Point {
	return []lay.Point{{}, {X: w * cm}, {X: w * cm, Y: h * cm}, {Y: h * cm}}
}

// jobs are three lays of invented pieces, in two widths.
func jobs() []Named {
	up := lay.Point{Y: 1}
	pieces := []lay.Piece{
		{Number: "1", Name: "Front", Outline: rect(30, 60), Grain: up, Drawn: 1, Mirrored: 1},
		{Number: "2", Name: "Back", Outline: rect(25, 65), Grain: up, Either: 1, Fold: &[2]lay.Point{{}, {Y: 65 * cm}}},
		{Number: "3", Name: "Patch", Outline: rect(10, 10), Grain: up, Either: 1, Cut: lay.Bias},
	}
	return []Named{
		{"View A, 140 cm", lay.Job{Cloth: lay.Cloth{Width: 140 * cm}, Pieces: pieces, Way: lay.LengthwiseFold}},
		{"View A, 115 cm", lay.Job{Cloth: lay.Cloth{Width: 115 * cm}, Pieces: pieces}},
		{"View B, 115 cm", lay.Job{Cloth: lay.Cloth{Width: 115 * cm}, Pieces: pieces[:2]}},
	}
}

func found(t testing.TB, jobs []Named) *File {
	t.Helper()
	var lays []lay.Lay
	for _, j := range jobs {
		l, err := j.Find(lay.Effort{Work: 10_000})
		if err != nil {
			t.Fatal(err)
		}
		lays = append(lays, l)
	}
	f, err := Remember("lays.lock", jobs, lays)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func possible(int) error { return nil }

// look reads a file and looks at it with the jobs; rules are joined in their order.
func look(src string, jobs []Named) (lays int, rules string, all []finding.Finding) {
	f, fs := Decode("lays.lock", []byte(src))
	got, more := f.Look(jobs, possible)
	for _, l := range got {
		if l != nil {
			lays++
		}
	}
	all = append(fs, more...)
	var names []string
	for _, x := range all {
		names = append(names, x.Rule)
	}
	return lays, strings.Join(names, " "), all
}

func TestWhatIsRememberedIsReadBackWithTheSameBytes(t *testing.T) {
	src := found(t, jobs()).Encode()
	f, fs := Decode("lays.lock", src)
	if len(fs) > 0 || len(f.Entries) != 3 {
		t.Fatalf("%v, %d lays", fs, len(f.Entries))
	}
	if again := f.Encode(); !bytes.Equal(src, again) {
		t.Errorf("%s\nis not\n%s", again, src)
	}
	turned := jobs()
	turned[0], turned[2] = turned[2], turned[0]
	if again := found(t, turned).Encode(); !bytes.Equal(src, again) {
		t.Errorf("in another order of the lays:\n%s\nis not\n%s", again, src)
	}
	if n, rules, _ := look(string(src), jobs()); n != 3 || rules != "" {
		t.Errorf("%d lays, found %s", n, rules)
	}
}

// A lay does not depend on names, on the order of the pieces or on where they are drawn.
func TestAKeyIsOfWhatALayDependsOn(t *testing.T) {
	src := string(found(t, jobs()).Encode())
	same := jobs()
	for i := range same {
		p := append([]lay.Piece(nil), same[i].Pieces...)
		p[0], p[1] = p[1], p[0]
		p[0].Name, p[0].Number = "Rear", "9"
		p[1].Grain = lay.Point{Y: 77}
		for k := range p {
			var r []lay.Point
			for n := range p[k].Outline {
				v := p[k].Outline[(n+2)%len(p[k].Outline)]
				r = append(r, lay.Point{X: v.X + 5, Y: v.Y - 7})
			}
			p[k].Outline = r
			if f := p[k].Fold; f != nil {
				p[k].Fold = &[2]lay.Point{{X: f[1].X + 5, Y: f[1].Y - 7}, {X: f[0].X + 5, Y: f[0].Y - 7}}
			}
		}
		same[i].Pieces = p
	}
	if n, rules, fs := look(src, same); n != 3 || rules != "" {
		t.Errorf("%d lays, found %s %v", n, rules, fs)
	}
	base := jobs()[0].Job
	for name, change := range map[string]func(*lay.Job){
		"width":     func(j *lay.Job) { j.Cloth.Width++ },
		"nap":       func(j *lay.Job) { j.Cloth.Nap = true },
		"clearance": func(j *lay.Job) { j.Cloth.Clearance++ },
		"way":       func(j *lay.Job) { j.Way = lay.Best },
		"drawn":     func(j *lay.Job) { j.Pieces[0].Drawn++ },
		"mirrored":  func(j *lay.Job) { j.Pieces[0].Mirrored++ },
		"either":    func(j *lay.Job) { j.Pieces[2].Either++ },
		"cut":       func(j *lay.Job) { j.Pieces[2].Cut = lay.EitherBias },
		"one way":   func(j *lay.Job) { j.Pieces[2].OneWay = true },
		"grain":     func(j *lay.Job) { j.Pieces[0].Grain.X = 1 },
		"fold":      func(j *lay.Job) { j.Pieces[1].Fold = nil },
		"outline":   func(j *lay.Job) { j.Pieces[0].Outline[2].X++ },
		"pieces":    func(j *lay.Job) { j.Pieces = j.Pieces[:2] },
	} {
		j := jobs()[0].Job
		if j.Key() != base.Key() {
			t.Fatal("the same job has two keys")
		}
		if change(&j); j.Key() == base.Key() {
			t.Errorf("the key does not depend on the %s", name)
		}
	}
}

func TestWhatIsWrongWithTheFileIsFound(t *testing.T) {
	src := string(found(t, jobs()).Encode())
	other := jobs()
	other[1].Cloth.Width -= 3 * cm // label and all else the same
	replace := func(a, b string) string {
		if !strings.Contains(src, a) {
			t.Fatalf("no %q in\n%s", a, src)
		}
		return strings.Replace(src, a, b, 1)
	}
	for _, c := range []struct {
		name, src string
		jobs      []Named
		lays      int
		rules     string
	}{
		{"no file", "", jobs(), 0, "lay-missing"},
		{"one more is needed", src, append(jobs(), Named{"View C", other[1].Job}), 3, "lay-missing"},
		{"a width was changed", src, other, 2, "lay-stale"},
		{"a view is gone", src, jobs()[:2], 2, "lay-unused"},
		{"another length", replace("length 650.00", "length 640.00"), jobs(), 2, "lay-edited"},
		{"a longer length", replace("length 650.00", "length 660.00"), jobs(), 2, "lay-edited"},
		{"another angle", replace(" 0 mirrored folded", " 90 mirrored folded"), jobs(), 2, "lay-edited"},
		{"a piece that is not there", replace("place 1 ", "place 99 "), jobs(), 2, "lay-edited"},
		{"another version", replace("lays 1", "lays 2"), jobs(), 0, "lays-unreadable lay-missing"},
		{"no version", replace("lays 1\n", ""), jobs(), 0, "lays-unreadable lay-missing"},
		{"a word nobody knows", replace(" folded", " draped"), jobs(), 2, "lays-unreadable lay-missing"},
		{"a line nobody knows", replace("way ", "weight "), jobs(), 2, "lays-unreadable lay-missing"},
		{"a line too few", replace("length 650.00\n", ""), jobs(), 2, "lays-unreadable lay-missing"},
		{"a line that belongs nowhere", replace("lays 1\n", "lays 1\nlength 5.00\n"), jobs(), 3, "lays-unreadable"},
		{"line ends of another system", strings.ReplaceAll(src, "\n", "\r\n"), jobs(), 3, ""},
	} {
		n, rules, fs := look(c.src, c.jobs)
		if n != c.lays || rules != c.rules {
			t.Errorf("%s: %d lays, want %d; found %q, want %q\n%v", c.name, n, c.lays, rules, c.rules, fs)
		}
	}
}

func TestAPlaceIsGivenForEachFinding(t *testing.T) {
	src := "# ours\nlays 1\nlay ab\nfor \"é\"\nway sideways\n"
	_, _, fs := look(src, nil)
	if len(fs) != 1 || fs[0].Place.Start != (finding.Pos{Offset: 30, Line: 5, Column: 1}) || fs[0].Place.End.Column != 13 {
		t.Errorf("%+v", fs)
	}
}

func TestPartsOfARunAreMerged(t *testing.T) {
	all := jobs()
	f, g := found(t, all[:2]), found(t, all[1:])
	f.Entries[1].Lay.Length += 7
	g.Entries[0].For = append(g.Entries[0].For, "View D")
	f.Merge(g)
	src := string(f.Encode())
	if n, rules, _ := look(src, all); n != 3 || rules != "" || !strings.Contains(src, "View D") {
		t.Errorf("%d lays, %s\n%s", n, rules, src)
	}
}

func TestALayOutOfDateIsWhereToBegin(t *testing.T) {
	f := found(t, jobs())
	other := jobs()[0]
	other.Cloth.Width += cm
	l := f.Start(other)
	if l == nil || l.Length != f.Entries[0].Lay.Length {
		t.Errorf("%v", l)
	}
	other.Label = "View Z"
	if l := f.Start(other); l != nil {
		t.Errorf("%v for a lay that is new", l)
	}
}

// Whatever the file holds, what is given out has passed the check, and what is written
// reads back as itself.
func FuzzDecode(f *testing.F) {
	needed := jobs()
	src := string(found(f, needed).Encode())
	f.Add(src)
	f.Add("lays 1\nlay x\nfor \"a\"\nway single-layer\nlength -1.00\nplace 1 -0.01 99999999.99 359 mirrored\n")
	f.Add(strings.ReplaceAll(src, "0 ", "1 "))
	f.Fuzz(func(t *testing.T, src string) {
		file, _ := Decode("lays.lock", []byte(src))
		lays, _ := file.Look(needed, possible)
		for i, l := range lays {
			if l == nil {
				continue
			}
			if n, err := needed[i].Check(*l); err != nil || n != l.Length {
				t.Fatalf("given out: %v (%d, %v)", *l, n, err)
			}
		}
		once := file.Encode()
		again, fs := Decode("lays.lock", once)
		if len(fs) > 0 || !bytes.Equal(again.Encode(), once) {
			t.Fatalf("%v\n%s", fs, once)
		}
	})
}

func BenchmarkLook(b *testing.B) {
	needed := jobs()
	src := found(b, needed).Encode()
	for b.Loop() {
		f, _ := Decode("lays.lock", src)
		if _, fs := f.Look(needed, possible); len(fs) > 0 {
			b.Fatal(fs)
		}
	}
}
