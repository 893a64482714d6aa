package model

import (
	"fmt"
	"math/big"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/lay"
	"seamwarden/compiler/measure"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// LayRules is what a pattern says of laying pieces on a material.
type LayRules struct {
	WithNap, WithoutNap bool // which layouts are asked for; neither: as the cloth is
	Way                 lay.Way
	Selvedges           *Amount // of each of the two
	Clearance           *Amount
}

// Laying is a lay that a pattern needs: of a material in one width, in one size, for
// the garments of a condition. Found is filled by the front door, and nil while no lay
// that holds is remembered.
type Laying struct {
	Material *Material
	Width    Amount // as it is declared, selvedges and all
	Nap      bool
	Cond     condition.Cond // in every size; the garments from which the same parts are cut
	Size     int            // -1 in a pattern without sizes
	Label    string
	// SpareMM is the length of cloth, in millimetres, that the parts fill which some of
	// the garments go without: the lay is enough for all of them, and so much more than
	// the least of them needs.
	SpareMM float64
	Job     lay.Job
	Found   *lay.Lay
}

// Needs is the length of cloth to buy for the lay that was found, exactly: what it takes,
// before it shrinks.
func (l *Laying) Needs() measure.Length { return l.Before(l.Found.Cloth()) }

// Before is so much cloth of the lay's material before it shrinks.
func (l *Laying) Before(cloth int64) measure.Length {
	s := lay.Shrinkage(0)
	if l.Material.Shrinks != nil {
		s, _ = shrinkage(l.Material.Shrinks.Text)
	}
	long, err := s.Need(cloth)
	if err != nil { // it was reported where it is declared
		return lay.Measure(cloth)
	}
	return long
}

// Naps lists the layouts of a material: with nap, without, or both.
func (m *Material) Naps() []bool {
	switch r := m.LayRules; {
	case r.WithNap && r.WithoutNap && !m.OneWay:
		return []bool{true, false}
	case m.OneWay || r.WithNap:
		return []bool{true}
	}
	return []bool{false}
}

// shrinkage reads a share in per cent, to a tenth of one.
func shrinkage(text string) (lay.Shrinkage, bool) {
	r, ok := new(big.Rat).SetString(strings.TrimSuffix(text, "%"))
	if !ok {
		return 0, false
	}
	r.Mul(r, big.NewRat(10, 1))
	n := lay.Shrinkage(r.Num().Int64())
	return n, r.IsInt() && n >= 0 && n <= 500
}

// laying reads a sentence about laying pieces on a material.
func (b *builder) laying(m *Material, node any) {
	switch n := node.(type) {
	case *dsl.Shrinks:
		m.Shrinks = &Text{n.By.Text, dsl.SpanOf(n.By.Tokens)}
		if _, ok := shrinkage(n.By.Text); !ok {
			b.report(badShrinkage(m.Shrinks))
			m.Shrinks = nil
		}
	case *dsl.Selvedges:
		m.LayRules.Selvedges = b.amount(n.Wide)
	case *dsl.Clearance:
		m.LayRules.Clearance = b.amount(n.By)
	case *dsl.Laying:
		for _, h := range n.How {
			m.LayRules.take(h)
		}
	}
}

func (r *LayRules) take(h *dsl.LayHow) {
	switch {
	case h.Nap == "with":
		r.WithNap = true
	case h.Nap == "without":
		r.WithoutNap = true
	case h.Layer:
		r.Way = lay.SingleLayer
	case h.Fold == "lengthwise":
		r.Way = lay.LengthwiseFold
	case h.Fold == "crosswise":
		r.Way = lay.CrosswiseFold
	}
}

func badShrinkage(t *Text) finding.Finding {
	return finding.Finding{Rule: "measure-not-understood", Severity: finding.Error, Place: finding.Place{Span: t.Span, Label: "not per cent"},
		Headline: fmt.Sprintf("%s is not how much cloth shrinks.", t.Text), Help: "Write it in per cent, to a tenth and at most 50: shrinks 3%."}
}
