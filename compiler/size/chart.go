// Package size reads a pattern's table of sizes and checks its numbers.
//
// In: the bytes of a YAML file. Out: a [Chart] of exact lengths, in which every
// row has a place for every size, and findings at their line and column. It
// does not know views and options: the guard of a row is kept as text, with its
// place, for whoever does.
//
// A table looks like this:
//
//	unit: in                     # of every number below: in, cm or mm
//	sizes: [8, 10, 12, 14]       # smallest first
//	body:
//	  waist: { name: Waist girth, values: [25, 26 1/2, 28, 30] }
//	  hip:   { name: Hip girth, values: { 8: 35, 10: 36 1/2, 12: 38, 14: 40 } }
//	finished:
//	  hip:    { name: Hip, over: hip, values: [38, 39 1/2, 41, 43] }
//	  length: { name: Back length, when: "B", values: [24, 24, 25, 25] }
//	pattern:                     # lengths that the source names as sizes.zip
//	  zip:    { name: Separating zip, unit: cm, values: [55, 55, 60, 60] }
//
//	cloth:                       # how much to buy
//	  narrow: { of: main, width: 45in, unit: yd, values: [2, 2, 2 1/4, 2 3/8] }
//
// Values are a list in the order of the sizes, or a map by size. A row may have
// its own unit, a note, and a guard (when). At the top, stretch: true says that
// the cloth gives, so that a garment may be smaller than the body; woven: true is
// the rule. follows: names a standard that the body measures are compared with
// (standard.go). rounding: says what printed conversions are a multiple of
// (rounding.go), choose: by which measure a size is chosen (choose.go), and drafts:
// what differs between drafts for different bodies (draft.go).
//
// Body and finished measures are graded (grade.go). The pattern's own lengths are
// not: zips and elastic come in the lengths that are sold.
//
// Nothing in the file is taken for what YAML thinks it is: a size called 10 and
// the number 26 1/2 are both read as they are written. Anchors and aliases are
// refused, so that a small file cannot stand for a huge one.
package size

import (
	"slices"

	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// Chart is a pattern's table of sizes. Sizes stand in the order in which they
// are written, each once.
type Chart struct {
	Unit                    measure.Unit // of the rows that name no other
	Sizes                   []string
	SizeSpans               []finding.Span
	Woven                   bool   // a garment smaller than the body is a mistake
	Follows                 string // a standard, "" for none
	FollowsSpan             finding.Span
	Body, Finished, Pattern []Row
	Cloth                   []Row            // how much of a material to buy
	Rounding                [4]measure.Steps // declared or usual, by Part
	Choose                  Choosing
	Drafts                  []Draft // none where there is one draft only
}

// Row is one measure in every size. Values and ValueSpans have one entry for each
// of the chart's sizes; see [Row.Has] for cells that could not be read.
type Row struct {
	Part       Part
	Inherited  bool // in a draft: the row stands above the drafts
	Key, Name  string
	Over       string // the body row that ease is taken from; "" for none
	When, Note string // When is the text of a guard; "" is always
	Unit       measure.Unit
	Of         string          // of a row of cloth: the material
	Width      measure.Measure // and how wide it lies; nothing if it does not say
	OfSpan     finding.Span
	WidthSpan  finding.Span
	KeySpan    finding.Span
	OverSpan   finding.Span
	WhenSpan   finding.Span // the text of the guard without its quotation marks
	Values     []measure.Length
	ValueSpans []finding.Span
	Limits     []measure.Length // of a body row: where each size begins, and where the last ends; nil if it does not say
	LimitsSpan finding.Span
	texts      []string // the values as they are written
}

// Has says whether the cell of the size with the number i was read. One that
// was not has a finding, a length of nothing and no place; no row at all has no cells.
func (r *Row) Has(i int) bool {
	return r != nil && i >= 0 && i < len(r.ValueSpans) && r.ValueSpans[i] != finding.Span{}
}

// complete says whether every cell was read.
func (r *Row) complete() bool {
	for i := range r.ValueSpans {
		if !r.Has(i) {
			return false
		}
	}
	return true
}

// Find gives the row of a key in any part of the chart, nil if there is none.
// Where parts share a key, the pattern's own lengths come before the finished
// measures and these before the body's.
func (c *Chart) Find(key string) *Row {
	for _, part := range [][]Row{c.Pattern, c.Finished, c.Body} {
		if r := find(part, key); r != nil {
			return r
		}
	}
	return nil
}

// BodyRow gives a row of body measures, nil if there is none of that key.
func (c *Chart) BodyRow(key string) *Row { return find(c.Body, key) }

// FinishedRow gives a row of finished measures, nil if there is none of that key.
func (c *Chart) FinishedRow(key string) *Row { return find(c.Finished, key) }

func find(part []Row, key string) *Row {
	i := slices.IndexFunc(part, func(r Row) bool { return r.Key == key })
	if i < 0 {
		return nil
	}
	return &part[i]
}

// Rows lists every row: body, finished, pattern, cloth, and then those of each
// draft.
func (c *Chart) Rows() (all []*Row) {
	for _, part := range [][]Row{c.Body, c.Finished, c.Pattern, c.Cloth} {
		for i := range part {
			all = append(all, &part[i])
		}
	}
	for _, d := range c.Drafts {
		all = append(all, d.Rows()...)
	}
	return
}

// Index gives the number of a size, -1 if the chart has none of that name.
func (c *Chart) Index(size string) int { return slices.Index(c.Sizes, size) }

// Value looks up the length of a key, as [Chart.Find] finds it, in a size. It is
// false if there is no such row, size or cell.
func (c *Chart) Value(key, size string) (measure.Length, bool) {
	r, i := c.Find(key), c.Index(size)
	if r == nil || !r.Has(i) {
		return measure.Length{}, false
	}
	return r.Values[i], true
}

// Ease gives, for each size, by how much a finished measure is larger than the
// body measure that it lies over: finished − body, so that a garment that is
// smaller than the body has negative ease. It is nil for a row that lies over
// none; where a cell of either row is missing the ease is nothing.
func (c *Chart) Ease(row *Row) []measure.Length {
	body := c.over(row)
	if body == nil {
		return nil
	}
	ease := make([]measure.Length, len(c.Sizes))
	for i := range ease {
		if row.Has(i) && body.Has(i) {
			ease[i] = row.Values[i].Sub(body.Values[i])
		}
	}
	return ease
}

// over gives the body row that a row lies over.
func (c *Chart) over(row *Row) *Row {
	if row.Over == "" {
		return nil
	}
	return c.BodyRow(row.Over)
}
