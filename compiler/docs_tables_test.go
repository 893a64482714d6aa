package compiler_test

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"seamwarden/compiler/check"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/dsl"
)

// The tables of the reference pages that list what the program knows are written
// from its own tables, between two comments in the page.

func TestDocsTables(t *testing.T) {
	language := readPage(t, "../dsl/LANGUAGE.md")
	language.table(t, "operations", operationsTable(t))
	language.table(t, "ways", words(model.Techniques))
	always, alone := language.reserved()
	language.table(t, "reserved", words(always))
	language.table(t, "reserved-alone", words(alone))
	language.table(t, "kinds", words(model.KindWords))
	language.table(t, "hazards", words(model.Hazards))
	language.save(t)
	contributor := readPage(t, "MODEL.md")
	contributor.table(t, "effects", effectsTable())
	contributor.table(t, "measures", measuresTable(t))
	contributor.table(t, "rules", rulesTable())
	contributor.save(t)
}

// table compares what stands between two markers with what it should be.
func (p *page) table(t *testing.T, name, text string) {
	from, to := p.between(t, name)
	p.want(t, &block{text: p.text[from:to], place: p.name + ", " + name, from: from, to: to}, text)
}

func (p *page) between(t *testing.T, name string) (from, to int) {
	begin, end := "<!-- "+name+": begin -->\n", "<!-- "+name+": end -->"
	from, to = strings.Index(p.text, begin), strings.Index(p.text, end)
	if from < 0 || to < from {
		t.Fatalf("%s has no place for the table %s", p.name, name)
	}
	return from + len(begin), to
}

var word = regexp.MustCompile(`[a-z]+`)

// reserved tries every word of the page as a name: which can never be one, and
// which cannot be the name of what a step calls by its name alone.
func (p *page) reserved() (always, alone []string) {
	refused := func(sentence string) bool {
		f := dsl.Parse("probe", []byte(sentence))
		return len(f.Findings) == 1 && f.Findings[0].Rule == "name-reserved"
	}
	all := word.FindAllString(p.text, -1)
	slices.Sort(all)
	for _, w := range slices.Compact(all) {
		switch {
		case refused("option " + w + " \"W\"\n"):
			always = append(always, w)
		case refused("seam " + w + " joins a.b to c.d\n"):
			alone = append(alone, w)
		}
	}
	return
}

func words(list []string) string { return "`" + strings.Join(list, "` `") + "`\n" }

var classNames = []struct {
	class model.Class
	title string
}{
	{model.Prepare, "Preparing"}, {model.Shape, "Shaping"}, {model.JoinUp, "Joining"}, {model.Trim, "Trimming"}, {model.Press, "Pressing"},
	{model.Finish, "Finishing"}, {model.Decorate, "Rows of stitching"}, {model.Attach, "Attaching"}, {model.Close, "Closing"},
}

// kindWords says what an operation can act on.
var kindWords = map[model.TargetKind]string{
	model.ToSeam: "seam", model.ToEdge: "edge", model.ToPartEdge: "edge", model.ToPiece: "piece", model.ToPart: "made-up part", model.ToBit: "part of a strip",
	model.ToNotion: "notion", model.ToMark: "mark", model.ToShaping: "dart", model.ToGap: "opening", model.ToMaterial: "fabric",
}

func actsOn(t *testing.T, kinds []model.TargetKind) string {
	var all []string
	for _, k := range kinds {
		w := kindWords[k]
		if w == "" {
			t.Fatalf("there is no word for the kind of thing %d", k)
		}
		if !slices.Contains(all, w) {
			all = append(all, w)
		}
	}
	switch len(all) {
	case 0:
		return "—"
	case len(kindWords) - 1: // edge stands twice
		return "anything"
	}
	return strings.Join(all, ", ")
}

func operationsTable(t *testing.T) string {
	var b strings.Builder
	listed := 0
	for _, c := range classNames {
		fmt.Fprintf(&b, "**%s**\n\n| Operation | Acts on | May say | Meaning |\n|---|---|---|---|\n", c.title)
		for _, o := range model.Operations {
			if o.Class != c.class {
				continue
			}
			listed++
			fmt.Fprintf(&b, "| `%s` | %s | %s | %s |\n", o.Verb, actsOn(t, o.On), phrasesOf(t, o.Verb), o.Means)
		}
		b.WriteString("\n")
	}
	if listed != len(model.Operations) {
		t.Errorf("%d of %d operations are listed: a class has no title", listed, len(model.Operations))
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// probes are the phrases of an operation, each in one wording. Those of everyVerb
// go with all of them and are not listed.
var probes = []struct{ name, short, text string }{
	{"distance", "`1/4in`", "1/4in"}, {"by", "`by`", "by 1/4in"}, {"turning", "`turning`", "turning 1/4in, 1/2in"}, {"to", "`to`", "to a"}, {"to", "", "to 12in"}, {"to", "", "to inside"},
	{"toward", "`toward`", "toward a"}, {"toward", "", "toward inside"}, {"open", "`open`", "open"}, {"flat", "`flat`", "flat"}, {"together", "`together`", "together"}, {"with", "`with`", "with a"},
	{"on", "`on`", "on a"}, {"at", "`at`", "at a"}, {"at", "", "around a"}, {"at", "", "inside a"}, {"along", "`along`", "along a"}, {"over", "`over`", "over a"},
	{"between", "`between`", "between a, b"}, {"into", "`into`", "into a"}, {"through", "`through`", "through a"}, {"through", "", "through all layers"},
	{"catching", "`catching`", "catching a"}, {"leaving", "`leaving`", "leaving 3in open as b"}, {"for", "`for`", "for a"}, {"round", "`in the round`", "in the round"},
	{"out", "`right side out`", "right side out"},
}

var everyProbe = []struct{ name, short, text string }{
	{"hand", "", "by hand"}, {"keeping", "", "keeping a clear"}, {"as", "", `as "Do it."`}, {"only", "", "on left only"}, {"side", "", "from the right side"},
	{"from", "", "open from a"},
}

// phrasesOf tries each phrase with a verb.
func phrasesOf(t *testing.T, verb string) string {
	var all []string
	for _, p := range probes {
		ok := says(t, verb, p.name, p.text)
		if ok && p.short != "" {
			all = append(all, p.short)
		}
		if first := slices.Contains(all, shortOf(p.name)); p.short == "" && ok != first {
			t.Errorf("%s: %q goes with it otherwise than its other wording", verb, p.text)
		}
	}
	for _, p := range everyProbe[:5] {
		if !says(t, verb, p.name, p.text) {
			t.Errorf("%s: %q should go with every operation", verb, p.text)
		}
	}
	return strings.Join(all, " ")
}

func shortOf(name string) string {
	for _, p := range probes {
		if p.name == name {
			return p.short
		}
	}
	return ""
}

// says parses one operation with one phrase and tells whether it is accepted.
func says(t *testing.T, verb, name, phrase string) bool {
	f := dsl.Parse("probe", []byte("step \"S\" {\n  "+verb+" thing "+phrase+"\n}\n"))
	if op := f.Sentences[0].Body[0]; op.Node != nil {
		got := op.Node.(*dsl.Op).Phrases
		if len(got) != 1 || got[0].Name() != name {
			t.Errorf("%s thing %s: is not read as one phrase %s", verb, phrase, name)
		}
	}
	return len(f.Findings) == 0
}

// Every field of dsl.Phrase is set by some probe, so that a phrase that is new to
// the language is missed here.
func TestDocsProbesAreAll(t *testing.T) {
	set := map[string]bool{"Tokens": true}
	for _, p := range append(probes, everyProbe...) {
		f := dsl.Parse("probe", []byte("step \"S\" {\n  sew thing "+p.text+"\n}\n"))
		op, ok := f.Sentences[0].Body[0].Node.(*dsl.Op)
		if !ok {
			t.Errorf("sew thing %s: cannot be read", p.text)
			continue
		}
		for _, x := range op.Phrases {
			v := reflect.ValueOf(*x)
			for i := range v.NumField() {
				if !v.Field(i).IsZero() {
					set[v.Type().Field(i).Name] = true
				}
			}
		}
	}
	for f := range reflect.TypeFor[dsl.Phrase]().Fields() {
		if !set[f.Name] {
			t.Errorf("no probe shows the phrase with %s: the table of operations leaves it out", f.Name)
		}
	}
}

func effectsTable() string {
	var b strings.Builder
	b.WriteString("| What it does | Operations |\n|---|---|\n")
	row := func(what string, has func(*model.Operation) bool) {
		var all []string
		for i := range model.Operations {
			if has(&model.Operations[i]) {
				all = append(all, "`"+model.Operations[i].Verb+"`")
			}
		}
		fmt.Fprintf(&b, "| %s | %s |\n", what, strings.Join(all, " "))
	}
	row("sews a declared seam or a dart", func(o *model.Operation) bool { return o.Sews })
	row("what it acts on is part of the garment", func(o *model.Operation) bool { return o.Joins })
	row("closes the edges that it acts on", func(o *model.Operation) bool { return o.Shuts })
	row("takes what it acts on from the shopping list", func(o *model.Operation) bool { return o.Uses == "objects" })
	row("takes what stands after `with` from it", func(o *model.Operation) bool { return o.Uses == "with" })
	row("uses the iron", func(o *model.Operation) bool { return o.Heat })
	row("uses a blade", func(o *model.Operation) bool { return o.Blade })
	return b.String()
}

// measuresTable prints a few measures of each kind.
func measuresTable(t *testing.T) string {
	var b strings.Builder
	b.WriteString("| Written | As | Printed |\n|---|---|---|\n")
	kinds := map[measure.Kind]string{measure.Detail: "a detail", measure.Body: "a body measure", measure.Cloth: "cloth to buy", measure.Width: "a width of cloth"}
	for _, x := range []struct {
		text string
		kind measure.Kind
	}{{"5/8in", measure.Detail}, {"1.5cm", measure.Detail}, {"5mm", measure.Detail}, {"26 1/2in", measure.Body}, {"92cm", measure.Body},
		{"2 1/4yd", measure.Cloth}, {"1.8m", measure.Cloth}, {"45in", measure.Width}, {"150cm", measure.Width}} {
		m, err := measure.Parse(x.text)
		if err != nil {
			t.Fatal(err)
		}
		i, c := measure.Print(m.Length, x.kind, m.Unit.System(), measure.English)
		if m.Unit.System() == measure.Metric {
			i, c = c, i
		}
		fmt.Fprintf(&b, "| `%s` | %s | %s (%s) |\n", x.text, kinds[x.kind], i, c)
	}
	return b.String()
}

func rulesTable() string {
	var b strings.Builder
	category := ""
	rules := check.Rules()
	slices.SortStableFunc(rules, func(x, y *check.Rule) int { return strings.Compare(x.Category, y.Category) })
	for _, r := range rules {
		if r.Category != category {
			category = r.Category
			fmt.Fprintf(&b, "\n**%s**\n\n| Rule | | What it finds |\n|---|---|---|\n", check.Upper(category))
		}
		waits := ""
		if r.FromAbsence {
			waits = ", waits"
		}
		fmt.Fprintf(&b, "| `%s` | %s%s | %s |\n", r.ID, r.Severity, waits, r.Purpose)
	}
	return strings.TrimPrefix(b.String(), "\n")
}
