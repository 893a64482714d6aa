package main

import (
	"math"
	"path/filepath"
	"testing"

	"seamwarden/compiler/outline"
)

// measured is a sample with its drawings as the reader of outlines gives them, so that a
// test measures what is in the files and not what the draft meant.
type measured struct {
	*testing.T
	*table
	pieces map[string]*outline.Piece
	size   int
}

func measure(t *testing.T, sample string) *measured {
	t.Helper()
	chart, err := readTable(filepath.Join("..", sample, "sizes.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	files, err := drawn("..", sample)
	if err != nil {
		t.Fatal(err)
	}
	m := &measured{T: t, table: chart, pieces: map[string]*outline.Piece{}}
	for name, src := range files {
		d, found := outline.ReadSVG(name, src)
		if d == nil || len(found) > 0 {
			t.Fatalf("%s: %v", name, found)
		}
		m.pieces[name[:len(name)-len(".svg")]] = d.Pieces[0]
	}
	return m
}

// eachSize runs a test for every size of the table.
func (m *measured) eachSize(f func(i int)) {
	for m.size = range m.Sizes {
		f(m.size)
	}
}

func (m *measured) outline(piece string) *outline.Outline {
	m.Helper()
	p := m.pieces[piece]
	if p == nil || p.Of(m.Sizes[m.size]) == nil {
		m.Fatalf("%s is not drawn in size %s", piece, m.Sizes[m.size])
	}
	return p.Of(m.Sizes[m.size])
}

// long is the length of an edge in millimetres.
func (m *measured) long(piece, edge string) float64 {
	m.Helper()
	e := m.outline(piece).Edge(edge)
	if e == nil {
		m.Fatalf("%s has no edge %s", piece, edge)
	}
	return e.Length()
}

// ends is the place where an edge ends, clockwise.
func (m *measured) ends(piece, edge string) outline.Point {
	e := m.outline(piece).Edge(edge)
	return e.Curves[len(e.Curves)-1].P[3]
}

// inside is the angle inside the piece at the place where an edge begins.
func (m *measured) inside(piece, edge string) float64 {
	m.Helper()
	o := m.outline(piece)
	for i, e := range o.Edges {
		if e.Name == edge {
			return 180 - o.Corner(i)
		}
	}
	m.Fatalf("%s has no edge %s", piece, edge)
	return 0
}

func (m *measured) near(what string, got, want, within float64) {
	m.Helper()
	if !(math.Abs(got-want) <= within) {
		m.Errorf("size %s: %s is %.1f, not %.1f", m.Sizes[m.size], what, got, want)
	}
}

// pattern is a length that the source names, in millimetres.
func (m *measured) pattern(key string, i int) float64 { return m.Find(key).Values[i].MM() }
