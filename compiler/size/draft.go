package size

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// A draft is a pattern drawn for another body in sizes of the same names: another
// cup, height or shape. What differs stands in the drafts; every other row stands
// above, once, and holds in all of them:
//
//	drafts:
//	  b-cup: { name: B cup, body: { bust: { values: [88, 92, 96] } } }
//	  d-cup: { name: D cup, sizes: [10, 12], body: { bust: { values: [96, 100] } } }

// Draft is one of several drafts. Its chart holds the rows of all drafts, cut down
// to its sizes, and then its own.
type Draft struct {
	Key, Name string
	When      string // the text of a guard; "" is always
	WhenSpan  finding.Span
	KeySpan   finding.Span
	*Chart
}

var draftKeys = []string{"name", "when", "sizes", "body", "finished", "pattern", "cloth"}

// mostDrafts is far above any real number.
const mostDrafts = 20

// drafts reads the drafts, once the rows that all of them have are read.
func (r *reader) drafts(n *yaml.Node) {
	if n.Kind != yaml.MappingNode {
		r.notAMapping(n, "The part drafts", "Each draft has a key: d-cup: { name: D cup, body: { … } }.")
		return
	}
	top := r.chart
	for _, e := range r.entries(n, "the part drafts", nil) {
		if len(top.Drafts) == mostDrafts {
			r.cannot(r.node(e.node), "one too many", fmt.Sprintf("The table has more than %d drafts.", mostDrafts), "Divide it into several patterns.")
			break
		}
		if d := r.draft(e, top); d != nil {
			top.Drafts = append(top.Drafts, *d)
		}
	}
	r.chart = top
	before := len(r.found)
	if r.sameRows(); len(r.found) == before { // else what is missing may be what tells them apart
		r.toldApart()
	}
}

// draft reads one draft. While it does, the reader's chart is the draft's.
func (r *reader) draft(e entry, top *Chart) *Draft {
	if e.value.Kind != yaml.MappingNode {
		r.notAMapping(e.value, "The draft "+e.key, "Write "+e.key+": { name: …, body: { … } }.")
		return nil
	}
	d := &Draft{Key: e.key, Name: nameOf(e.key), KeySpan: r.node(e.node), Chart: top.empty()}
	got := map[string]*yaml.Node{}
	for _, f := range r.entries(e.value, "a draft", draftKeys) {
		got[f.key] = f.value
	}
	if n := got["name"]; n != nil {
		if text, _ := r.words(n, "name"); text != "" {
			d.Name = text
		}
	}
	if n := got["when"]; n != nil {
		d.When, d.WhenSpan = r.guard(n)
	}
	r.chart = d.Chart
	r.draftSizes(got["sizes"], top)
	for part, rows := range d.parts() {
		for i := range *top.parts()[part] {
			*rows = append(*rows, (*top.parts()[part])[i].cutTo(top, d.Chart))
		}
		for _, row := range r.part(got[partNames[part]], Part(part)) {
			if i := slices.IndexFunc(*rows, func(x Row) bool { return x.Key == row.Key }); i >= 0 {
				r.aboveToo(&row, (*rows)[i].KeySpan)
				continue
			}
			*rows = append(*rows, row)
		}
	}
	return d
}

// empty is a chart with the head of another and no rows.
func (c *Chart) empty() *Chart {
	d := *c
	d.Body, d.Finished, d.Pattern, d.Cloth, d.Drafts = nil, nil, nil, nil, nil
	return &d
}

// parts gives the rows of each part, in the order of the parts.
func (c *Chart) parts() []*[]Row { return []*[]Row{&c.Body, &c.Finished, &c.Pattern, &c.Cloth} }

// cutTo gives a row's cells for the sizes of a draft.
func (r *Row) cutTo(from, to *Chart) Row {
	x := *r
	x.Inherited = true
	x.Values, x.ValueSpans, x.texts = make([]measure.Length, len(to.Sizes)), make([]finding.Span, len(to.Sizes)), make([]string, len(to.Sizes))
	for i, s := range to.Sizes {
		if k := from.Index(s); r.Has(k) {
			x.Values[i], x.ValueSpans[i], x.texts[i] = r.Values[k], r.ValueSpans[k], r.texts[k]
		}
	}
	if first := from.Index(to.Sizes[0]); len(r.Limits) > 0 {
		x.Limits = r.Limits[first : first+len(to.Sizes)+1]
	}
	return x
}

// draftSizes reads which of the sizes a draft has: a run of them, all if it does
// not say.
func (r *reader) draftSizes(n *yaml.Node, top *Chart) {
	if n == nil {
		return
	}
	if n.Kind != yaml.SequenceNode || len(n.Content) == 0 {
		r.badSizes(n)
		return
	}
	first := top.Index(n.Content[0].Value)
	for k, s := range n.Content {
		if first < 0 || top.Index(s.Value) != first+k {
			r.cannot(r.node(s), "not the next size", fmt.Sprintf("“%s” is not the next size of this table.", clip(s.Value)),
				"A draft has sizes that follow each other in "+strings.Join(top.Sizes, ", ")+".")
			return
		}
	}
	c := r.chart
	c.Sizes, c.SizeSpans = top.Sizes[first:first+len(n.Content)], nil
	for _, s := range n.Content {
		c.SizeSpans = append(c.SizeSpans, r.node(s))
	}
}

func (r *reader) aboveToo(row *Row, above finding.Span) {
	f := unreadable(row.KeySpan, "in a draft", fmt.Sprintf("The row %s stands above the drafts and in one of them.", row.Key),
		"Put it into every draft if it differs, or leave it above if it does not.")
	f.Related = []finding.Place{place(above, "for all drafts")}
	r.report(f)
}

// sameRows reports a draft without a row that the first draft with it has: it
// would have no such measure at all.
func (r *reader) sameRows() {
	drafts := r.chart.Drafts
	for part := range partNames {
		first := map[string]*Draft{}
		for i := range drafts {
			for _, row := range *drafts[i].parts()[part] {
				if first[row.Key] == nil {
					first[row.Key] = &drafts[i]
				}
			}
		}
		for i := range drafts {
			for _, key := range sortedKeys(first) {
				if find(*drafts[i].parts()[part], key) == nil {
					r.report(finding.Finding{Rule: "size-missing-cell", Headline: fmt.Sprintf("The draft %s has no row %s, which %s has.", drafts[i].Name, key, first[key].Name),
						Place: place(drafts[i].KeySpan, "without "+key), Related: []finding.Place{place(find(*first[key].parts()[part], key).KeySpan, "the row")},
						Why: "Whoever makes this draft finds no such measure.", Help: "Add the row to this draft, or put it above the drafts if it is the same in all."})
				}
			}
		}
	}
}

// toldApart reports two drafts that share a size and have the same body measures in
// all that they share.
func (r *reader) toldApart() {
	drafts := r.chart.Drafts
	for i := range drafts {
		for k := range drafts[:i] {
			pair := &Chart{Sizes: r.chart.Sizes, Drafts: []Draft{drafts[k], drafts[i]}}
			shared := slices.ContainsFunc(drafts[i].Sizes, func(s string) bool { return drafts[k].Index(s) >= 0 })
			if !shared || slices.ContainsFunc(drafts[i].Body, func(row Row) bool { return pair.draftsDiffer(row.Key) }) {
				continue
			}
			r.report(finding.Finding{Rule: "drafts-not-told-apart", Severity: finding.Warning,
				Headline: fmt.Sprintf("%s and %s have the same body measures in every size that both have.", drafts[k].Name, drafts[i].Name),
				Place:    place(drafts[i].KeySpan, "for the same body"), Related: []finding.Place{place(drafts[k].KeySpan, "as this one")},
				Why: "Nobody can tell from her measures which of the two to make.", Help: "Put the body measure that differs into both: the bust or the underbust of a cup, the height of a long draft."})
			return
		}
	}
}

func sortedKeys[T any](m map[string]T) (keys []string) {
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return
}

// Versions lists the charts to choose from: one for each draft, or the chart
// itself under no name.
func (c *Chart) Versions() []Draft {
	if len(c.Drafts) == 0 {
		return []Draft{{Chart: c}}
	}
	return c.Drafts
}

// everywhere says whether each version has such a row of body measures.
func (c *Chart) everywhere(key string) bool {
	return !slices.ContainsFunc(c.Versions(), func(d Draft) bool { return d.BodyRow(key) == nil })
}

// complete says whether each version has every cell of such a row of body measures.
func (c *Chart) complete(key string) bool {
	return !slices.ContainsFunc(c.Versions(), func(d Draft) bool {
		row := d.BodyRow(key)
		return row == nil || !row.complete()
	})
}

// DraftRow is a row with the draft that it stands in, nil above the drafts.
type DraftRow struct {
	*Row
	Draft *Draft
}

// Cell gives the number in the row of the size with the number i in the table, -1 if
// the row's draft does not have it.
func (r DraftRow) Cell(c *Chart, i int) int {
	if r.Draft == nil {
		return i
	}
	return r.Draft.Index(c.Sizes[i])
}

// SizesOf gives the sizes of the row's cells.
func (r DraftRow) SizesOf(c *Chart) []string {
	if r.Draft == nil {
		return c.Sizes
	}
	return r.Draft.Sizes
}

// FindAll gives the row of a key in any part, as [Chart.Find] does; where none stands
// above the drafts, that of each draft.
func (c *Chart) FindAll(key string) []DraftRow {
	return c.inDrafts(func(d *Chart) *Row { return d.Find(key) })
}

// FindIn gives the row of a key in a part of the chart; where none stands above the
// drafts, that of each draft.
func (c *Chart) FindIn(part Part, key string) []DraftRow {
	return c.inDrafts(func(d *Chart) *Row { return find(*d.parts()[part], key) })
}

func (c *Chart) inDrafts(look func(*Chart) *Row) (all []DraftRow) {
	if r := look(c); r != nil {
		return []DraftRow{{r, nil}}
	}
	for i := range c.Drafts {
		if r := look(c.Drafts[i].Chart); r != nil {
			all = append(all, DraftRow{r, &c.Drafts[i]})
		}
	}
	return
}

// ClothRows lists the rows of cloth: those above the drafts, and then each draft's own.
func (c *Chart) ClothRows() (all []DraftRow) {
	for i := range c.Cloth {
		all = append(all, DraftRow{&c.Cloth[i], nil})
	}
	for d := range c.Drafts {
		for i := range c.Drafts[d].Cloth {
			if row := &c.Drafts[d].Cloth[i]; !row.Inherited {
				all = append(all, DraftRow{row, &c.Drafts[d]})
			}
		}
	}
	return
}

// Girth says whether a row measures round the body, as far as its words tell.
func (r *Row) Girth() bool { return isGirth(r) }
