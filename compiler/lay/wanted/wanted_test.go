package wanted_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"seamwarden/compiler"
	"seamwarden/compiler/check"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/lay"
	"seamwarden/compiler/lay/wanted"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// svg is a rectangle in two sizes, with edges top, side, base and fold clockwise from
// the upper left corner. The larger size is 20 mm wider.
func svg(w, h int, attributes string) string {
	group := func(size string, w int) string {
		return fmt.Sprintf(`<g id="size-%s"><path id="top_%[1]s" d="M0 0 H%[2]d"/><path id="side_%[1]s" d="M%[2]d 0 V%[3]d"/><path id="base_%[1]s" d="M%[2]d %[3]d H0"/><path id="fold-edge_%[1]s" data-edge="middle" d="M0 %[3]d V0"/></g>`, size, w, h)
	}
	return fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="2000mm" viewBox="0 0 2000 2000" %s>%s%s<line id="grain" x1="50" y1="20" x2="50" y2="%d"/></svg>`, attributes, group("S", w), group("M", w+20), h-20)
}

const table = "unit: cm\nsizes: [S, M]\nbody:\n  bust: { name: Bust girth, values: [86, 94] }\n"

// tunic is an invented garment with a collar in one view and pockets to choose.
const tunic = `pattern "Tunic" {
  allow 1cm
  sizes "sizes.yaml"
}
view A
view B
option pocket "Pocket"
option trim "Trim"
fabric main "Main fabric" { widths 140cm, 150cm; selvedges 1cm }
interfacing fuse "Interfacing" fusible { widths 90cm }
notion button "Button" when trim
piece front 1 "Front" {
  edges top, side, base, middle
  outline "front.svg"
  cut 1 main on fold middle
}
piece sleeve 2 "Sleeve" {
  edges top, side, base, middle
  outline "sleeve.svg"
  cut 2 main mirrored
}
piece collar 3 "Collar" when B {
  symmetric
  edges top, side, base, middle
  outline "sleeve.svg"
  cut 2 main as upper, under
  cut 1 fuse
}
strip loop 4 40cm x 20cm "Loop" cut 2 main on bias when pocket
`

// lists gives what a pattern needs; found are the findings about it.
func lists(t *testing.T, source string, files map[string]string) (l *wanted.List, found []finding.Finding) {
	t.Helper()
	folder := fstest.MapFS{"pattern.seam": {Data: []byte(source)}, "sizes.yaml": {Data: []byte(table)}}
	for name, text := range files {
		folder[name] = &fstest.MapFile{Data: []byte(text)}
	}
	r, err := compiler.Compile(folder)
	if err != nil {
		t.Fatal(err)
	}
	p := r.Pattern
	names := check.Names(p)
	words := func(c condition.Cond) string { return p.Space.Words(p.Space.Smallest(c, p.Valid), names) }
	return wanted.Sets(p, words).Draw(), r.Findings
}

// sound is lists for a pattern that can be read.
func sound(t *testing.T, source string, files map[string]string) *wanted.List {
	t.Helper()
	l, found := lists(t, source, files)
	for _, f := range found {
		if strings.HasPrefix(f.Rule, "outline") || strings.HasSuffix(f.Rule, "not-understood") || strings.HasSuffix(f.Rule, "unknown") {
			t.Fatalf("%s: %s %v", f.Rule, f.Headline, f.Place.Span)
		}
	}
	return l
}

func drawings() map[string]string {
	return map[string]string{"front.svg": svg(300, 600, `data-allowance="none"`), "sleeve.svg": svg(250, 400, `data-allowance="included"`)}
}

func labels(l *wanted.List) (all []string) {
	for _, x := range l.Lays {
		all = append(all, x.Label)
	}
	return
}

// The option that only adds a button does not multiply lays: there are the sets with and
// without the collar, with and without the loop, in two sizes and two widths.
func TestOnlyWhatIsCutTellsLaysApart(t *testing.T) {
	l := sound(t, tunic, drawings())
	var main []string
	for _, s := range labels(l) {
		if strings.HasPrefix(s, "main, 140cm") {
			main = append(main, s)
		}
	}
	slices.Sort(main)
	want := []string{
		"main, 140cm, in view A with pocket, size M", "main, 140cm, in view A with pocket, size S",
		"main, 140cm, in view A without pocket, size M", "main, 140cm, in view A without pocket, size S",
		"main, 140cm, in view B with pocket, size M", "main, 140cm, in view B with pocket, size S",
		"main, 140cm, in view B without pocket, size M", "main, 140cm, in view B without pocket, size S",
	}
	if !slices.Equal(main, want) {
		t.Errorf("%q", main)
	}
	if len(l.Lays) != 2*8+2 || len(l.Not) != 0 {
		t.Errorf("%d lays, not laid: %v", len(l.Lays), l.Not)
	}
}

// What is laid: the front with 1 cm more on every edge but the fold, the sleeves as they
// are drawn, in pairs; strips by their measures.
func TestPartsAreDrawnOutAsTheyAreCut(t *testing.T) {
	l := sound(t, tunic, drawings())
	i := slices.IndexFunc(l.Lays, func(x *model.Laying) bool {
		return strings.HasPrefix(x.Label, "main, 140cm, in view B with pocket, size M")
	})
	j := l.Lays[i].Job
	if j.Cloth.Width != 138_000 {
		t.Errorf("the cloth is %d wide without its selvedges", j.Cloth.Width)
	}
	for _, c := range []struct {
		name                    string
		wide, high              int64
		drawn, mirrored, either int
		fold                    bool
		cut                     lay.Angle
	}{
		{"Front", 33_000, 62_000, 0, 0, 1, true, lay.Straight},
		{"Sleeve", 27_000, 40_000, 1, 1, 0, false, lay.Straight},
		{"Collar", 27_000, 40_000, 0, 0, 2, false, lay.Straight},
		{"Loop", 40_000, 20_000, 0, 0, 2, false, lay.EitherBias},
	} {
		k := slices.IndexFunc(j.Pieces, func(p lay.Piece) bool { return p.Name == c.name })
		if k < 0 {
			t.Errorf("no %s", c.name)
			continue
		}
		p := j.Pieces[k]
		low, high := p.Outline[0], p.Outline[0]
		for _, v := range p.Outline {
			low = lay.Point{X: min(low.X, v.X), Y: min(low.Y, v.Y)}
			high = lay.Point{X: max(high.X, v.X), Y: max(high.Y, v.Y)}
		}
		// Outlines contain what is drawn, and are at most some hundredths larger.
		if w, h := high.X-low.X, high.Y-low.Y; w < c.wide || w > c.wide+4 || h < c.high || h > c.high+4 {
			t.Errorf("%s is %d by %d, want %d by %d", c.name, w, h, c.wide, c.high)
		}
		if p.Drawn != c.drawn || p.Mirrored != c.mirrored || p.Either != c.either || (p.Fold != nil) != c.fold || p.Cut != c.cut {
			t.Errorf("%s: %+v", c.name, p)
		}
		if c.fold && p.Fold[0].X != p.Fold[1].X {
			t.Errorf("the fold edge of the %s is %v", c.name, *p.Fold)
		}
		if p.Grain.X != 0 || p.Grain.Y <= 0 {
			t.Errorf("the grain of the %s is %v", c.name, p.Grain)
		}
	}
	found, err := j.Find(lay.Effort{Work: 20_000})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := j.Check(found); err != nil {
		t.Error(err)
	}
}

func TestWhatCannotBeLaidIsSaid(t *testing.T) {
	for name, c := range map[string]struct {
		old, new, why string
		lays          int
	}{
		"a piece without outline":  {"  outline \"front.svg\"\n", "", "the front has no outline", 2},
		"in one view":              {"outline \"front.svg\"", "outline \"front.svg\" when A", "the front has no outline", 2*4 + 2},
		"no widths":                {"{ widths 90cm }", "", "its widths are not said", 2 * 8},
		"a size that is not there": {"sizes.yaml", "more.yaml", "the sleeve is not drawn in size L", 2*8 + 2},
	} {
		files := drawings()
		files["more.yaml"] = strings.NewReplacer("[S, M]", "[S, M, L]", "[86, 94]", "[86, 94, 102]").Replace(table)
		folder := strings.Replace(tunic, c.old, c.new, 1)
		if folder == tunic {
			t.Fatal(name)
		}
		l, _ := lists(t, folder, files)
		if len(l.Lays) != c.lays || !slices.ContainsFunc(l.Not, func(n wanted.NotLaid) bool { return n.Why == c.why }) {
			t.Errorf("%s: %d lays; not laid: %+v", name, len(l.Lays), l.Not)
		}
	}
	if l, _ := lists(t, strings.ReplaceAll(tunic, "outline", "// outline"), nil); len(l.Lays)+len(l.Not) > 0 {
		t.Errorf("without any outline there are %v and %v", labels(l), l.Not)
	}
}

// Twenty options that each add a strip are not listed one by one.
func TestManyOptionsStayCheap(t *testing.T) {
	source := tunic
	for i := range 20 {
		source = strings.Replace(source, "fabric main", fmt.Sprintf("option o%d \"Extra %[1]d\"\nfabric main", i), 1)
		source += fmt.Sprintf("strip s%d 20cm x %dcm \"Strip %[1]d\" cut 3 main when o%[1]d\n", i, 10+i)
	}
	l := sound(t, source, drawings())
	if n := len(l.Lays); n < 48 || n > 4*48+2 {
		t.Errorf("%d lays", n)
	}
	if !slices.ContainsFunc(l.Not, func(n wanted.NotLaid) bool { return strings.Contains(n.Why, "more than 48 different sets") }) {
		t.Errorf("it is not said: %+v", l.Not)
	}
	if !slices.ContainsFunc(l.Lays, func(x *model.Laying) bool { return x.SpareMM > 0 }) {
		t.Error("no lay says that it has pieces to spare")
	}
	// Every garment is in exactly one set, and its lay has all of its strips.
	for _, x := range l.Lays {
		if len(x.Job.Pieces) < 2 && x.Material.ID == "main" {
			t.Errorf("%s has %d pieces", x.Label, len(x.Job.Pieces))
		}
	}
}
