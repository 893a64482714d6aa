package wording

import (
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/check"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/size"
)

// SizeTold is a choice of size in words.
type SizeTold struct {
	Heading  string
	Measures []MeasureTold // the leading one first
	Say      []string      // what somebody is told, in sentences
	Others   []string      // what the other drafts give
}

// MeasureTold is one measure, and the ease that is left there.
type MeasureTold struct {
	Line string
	Ease []string
}

// Size words the size that a chart chooses for somebody, from what she measured. The
// error says that the pattern's language has no phrases.
func Size(p *model.Pattern, own map[string]measure.Measure, chosen *size.Chosen) (*SizeTold, error) {
	ph, err := load(p.Lang)
	if err != nil {
		return nil, err
	}
	open := make(condition.Assignment, p.Space.Vars())
	for i := range open {
		open[i] = -1
	}
	w := &writer{Pattern: p, chosen: open, valid: p.Valid, ph: ph, names: check.Names(p)}
	t := &teller{writer: w, own: own, choice: &chosen.Choices[chosen.Best]}
	out := &SizeTold{Heading: t.heading(chosen.Lead)}
	for i := range t.choice.Fits {
		f := &t.choice.Fits[i]
		out.Measures = append(out.Measures, t.measured(f, i == 0))
		if said := t.advice(f, i == 0); said != "" {
			out.Say = append(out.Say, said)
		}
	}
	for i := range chosen.Choices {
		if c := &chosen.Choices[i]; i != chosen.Best {
			out.Others = append(out.Others, t.other(c))
		}
	}
	if chosen.Tied {
		out.Others = append(out.Others, t.tied(chosen.Ask))
	}
	return out, nil
}

// teller words one choice.
type teller struct {
	*writer
	own    map[string]measure.Measure
	choice *size.Choice
}

func (t *teller) say(key string, with ...string) string {
	s := t.ph.Choose[key]
	for i := 0; i+1 < len(with); i += 2 {
		s = put(s, with[i], with[i+1])
	}
	return s
}

func (t *teller) heading(lead string) string {
	by := lower(t.row(lead).Name)
	if t.choice.Version.Key != "" {
		return t.say("take-draft", "p", t.Title, "draft", t.choice.Version.Name, "s", t.name(t.choice.Size), "lead", by)
	}
	return t.say("take", "p", t.Title, "s", t.name(t.choice.Size), "lead", by)
}

func (t *teller) row(key string) *size.Row { return t.choice.Version.BodyRow(key) }

func (t *teller) name(i int) string { return t.choice.Version.Sizes[i] }

// mine words what was measured, the system in which it was taken first.
func (t *teller) mine(key string) string {
	i, m := t.Pattern.Sizes.PrintOwn(t.row(key), t.own[key])
	return inBoth(i, m, t.own[key].Unit.System())
}

// apart words a length by which a body differs from a row.
func (t *teller) apart(row *size.Row, l measure.Length, key string) string {
	i, m := t.Pattern.Sizes.PrintDifference(row, l, t.own[key].Unit)
	return inBoth(i, m, t.own[key].Unit.System())
}

func inBoth(imperial, metric string, first measure.System) string {
	return booklet.Plain([]booklet.Inline{booklet.Measure{Imperial: imperial, Metric: metric, MetricFirst: first == measure.Metric}})
}

// measured words a measure and the ease over it.
func (t *teller) measured(f *size.Fit, lead bool) (out MeasureTold) {
	row, s := t.row(f.Key), t.choice.Size
	i, m := t.Pattern.Sizes.Print(row, row.Values[s])
	key := "row"
	if !lead && f.Size != s {
		key = "row-other"
	}
	out.Line = t.say(key, "m", row.Name, "own", t.mine(f.Key), "s", t.name(s), "of", t.name(f.Size), "v", inBoth(i, m, t.own[f.Key].Unit.System()))
	for _, e := range f.Ease {
		when := ""
		if at := t.when(t.RowCond(e.Row)); at != "" {
			when = " (" + lower(at) + ")"
		}
		key := "ease"
		if e.Here.Sign() < 0 {
			key = "ease-tight"
		}
		out.Ease = append(out.Ease, t.say(key, "f", e.Row.Name, "when", when, "s", t.name(s),
			"here", t.apart(e.Row, e.Here.Abs(), f.Key), "meant", t.apart(e.Row, e.Meant, f.Key)))
	}
	return out
}

// advice says what to do about a measure, "" for nothing.
func (t *teller) advice(f *size.Fit, lead bool) string {
	row, s := t.row(f.Key), t.choice.Size
	m := lower(row.Name)
	with := func(key string) string {
		d := f.Off
		if f.Where != size.Inside {
			d = f.Beyond
		}
		return t.say(key, "m", m, "d", t.apart(row, d.Abs(), f.Key), "s", t.name(f.Size), "of", t.name(f.Size))
	}
	switch {
	case lead && f.Where != size.Inside:
		return with(string(f.Where))
	case lead && f.Between:
		return t.between(f, m)
	case lead:
		return ""
	case f.Size != s && f.Easy && row.Girth():
		return t.say("easy", "m", m, "of", t.name(f.Size), "s", t.name(s))
	case f.Where != size.Inside && row.Girth():
		return with("other-" + string(f.Where))
	case f.Size == s && f.Where == size.Inside:
		return ""
	}
	key := map[bool]string{true: "larger", false: "smaller"}[f.Off.Sign() > 0]
	if key == "smaller" && len(f.Ease) == 0 && row.Girth() {
		return "" // the table does not say that the garment lies close there
	}
	if !row.Girth() {
		key = map[bool]string{true: "longer", false: "shorter"}[f.Off.Sign() > 0]
	}
	return t.say(key, "m", m, "of", t.name(f.Size), "s", t.name(s), "d", t.apart(row, f.Off.Abs(), f.Key))
}

// between tells somebody between two sizes of the one that she does not get.
func (t *teller) between(f *size.Fit, m string) string {
	other, how := f.Lower, "closer"
	if f.Size == f.Lower {
		other, how = f.Lower+1, "looser"
	}
	if !t.row(f.Key).Girth() {
		how = map[string]string{"closer": "shorter-cut", "looser": "longer-cut"}[how]
	}
	return t.say("between", "m", m, "a", t.name(f.Lower), "b", t.name(f.Lower+1), "s", t.name(f.Size), "other", t.name(other), "how", t.ph.Choose[how])
}

// other words what another draft gives.
func (t *teller) other(c *size.Choice) string {
	lead := c.Lead()
	return t.say("draft", "draft", c.Version.Name, "s", c.Version.Sizes[c.Size], "d", t.apart(t.row(lead.Key), c.Misses, lead.Key))
}

func (t *teller) tied(ask []string) string {
	if len(ask) == 0 {
		return t.say("tied")
	}
	var names []string
	for _, key := range ask {
		names = append(names, lower(t.row(key).Name))
	}
	return t.say("ask", "ask", strings.Join(names, ", "))
}
