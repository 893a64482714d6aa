package model

import (
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/dsl/finding"
)

// Seam is a declared joining of edges.
type Seam struct {
	Decl
	Allow    *Amount // its own allowance, or the pattern's; nil if neither
	AllowTo  *Amount // the second row's, if it differs
	Own      bool    // Allow was said for this seam
	None     bool    // it has no allowance on purpose
	Ease     *Amount
	Gathered bool
	Joins    []*Target // the first row
	To       []*Target // the second
	Catching []*Caught
	Copies   []*Join
	Sentence finding.Span
	uses     []*EdgeUse // as Uses lists them; nil until the pattern is put together
	rows     []*Target  // as Rows lists them
}

// Called gives the words of a seam with the word seam, which is not said twice: the
// waist seam, also where its words are "waist seam".
func (s *Seam) Called() string { return strings.TrimSuffix(s.Name, " seam") + " seam" }

// Called gives the words of an edge with the word edge, which is not said twice.
func (e *Edge) Called() string { return edgeWords(e.Name) }

func edgeWords(name string) string {
	if strings.HasSuffix(name, "edge") || strings.HasSuffix(name, "hem") {
		return name
	}
	return name + " edge"
}

// Join is one real seam line: a seam of a mirrored pair has two, one a side.
type Join struct {
	Seam *Seam
	Side Side
	In   string     // the cloth or the copies that it is in, of a seam that is in several
	A, B []*EdgeUse // in the order of the rows
	Cond condition.Cond
	uses []*EdgeUse // as Uses lists them
}

// Caught lies between the layers of a seam.
type Caught struct {
	Target *Target
	Count  int
	Said   bool // the number is written
	At     *Target
}

// Allowance gives the seam's allowance, zero if it has none on purpose.
func (s *Seam) Allowance() (measure.Length, bool) {
	if s.Allow == nil {
		return measure.Length{}, s.None
	}
	return s.Allow.Length, true
}

// Uses lists every edge that lies in the seam, and what is caught. The list is
// shared: it must not be changed.
func (s *Seam) Uses() (all []*EdgeUse) {
	if s.uses != nil {
		return s.uses
	}
	for _, j := range s.Copies {
		all = append(append(all, j.A...), j.B...)
	}
	for _, c := range s.Catching {
		all = append(all, c.Target.Uses...)
	}
	return slices.Clip(all)
}

// Rows lists what stands in the first row and then in the second. The list is
// shared.
func (s *Seam) Rows() []*Target {
	if s.rows != nil {
		return s.rows
	}
	return slices.Concat(s.Joins, s.To)
}

// Uses lists the edges of both rows. The list is shared.
func (j *Join) Uses() []*EdgeUse {
	if j.uses != nil {
		return j.uses
	}
	return slices.Concat(j.A, j.B)
}

// gather makes the lists that are asked for again and again, once nothing is added
// to the seam any more.
func (s *Seam) gather() {
	s.rows = slices.Clip(s.Rows())
	for _, j := range s.Copies {
		j.uses = slices.Clip(j.Uses())
	}
	s.uses = s.Uses()
}
