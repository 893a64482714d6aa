package lay

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"
)

// Key is a hash of what a lay of the job depends on: outlines, counts, grain, folds,
// the cloth and the way of laying. It does not depend on names, on the order of the
// pieces, on where an outline is drawn on its sheet, or on the search.
func (j Job) Key() string {
	h := sha256.New()
	fmt.Fprintf(h, "%d %t %d %s\n", j.Cloth.Width, j.Cloth.Nap, j.Cloth.Clearance, j.Way)
	for _, i := range j.Order() {
		fmt.Fprintln(h, j.Pieces[i].content())
	}
	return hex.EncodeToString(h.Sum(nil)[:16])
}

// Order gives the indices of the pieces in an order that depends on their content
// only, so that a remembered lay can name them by number.
func (j Job) Order() []int {
	content := make([]string, len(j.Pieces))
	order := make([]int, len(j.Pieces))
	for i, p := range j.Pieces {
		content[i], order[i] = p.content(), i
	}
	slices.SortStableFunc(order, func(a, b int) int { return strings.Compare(content[a], content[b]) })
	return order
}

// content is what a lay depends on of one piece.
func (p Piece) content() string { return p.kept(p.describe) }

func (p Piece) describe() string {
	n := p.normal()
	fold := "-"
	if n.Fold != nil {
		fold = fmt.Sprint(*n.Fold)
	}
	return fmt.Sprintf("%d %d %d %d %t %v %s %s", n.Drawn, n.Mirrored, n.Either, n.Cut, n.OneWay, n.Grain, fold, shapeKey(n.Outline))
}

// normal is the piece as it would be drawn with the corner of its box at the origin,
// its ring counter-clockwise, and its grain line and fold edge in the least numbers. It
// is what is laid, so that what is rounded on the way does not depend on the sheet on
// which the piece is drawn.
func (p Piece) normal() Piece {
	r := counterClockwise(p.Outline)
	low, _ := corner(r)
	p.Outline = moved(r, Point{-low.X, -low.Y})
	if d := divisor(abs(p.Grain.X), abs(p.Grain.Y)); d > 0 {
		p.Grain = Point{p.Grain.X / d, p.Grain.Y / d}
	}
	if p.Fold != nil {
		f := *p.Fold
		if f[1].X < f[0].X || f[1].X == f[0].X && f[1].Y < f[0].Y {
			f[0], f[1] = f[1], f[0]
		}
		p.Fold = &[2]Point{{f[0].X - low.X, f[0].Y - low.Y}, {f[1].X - low.X, f[1].Y - low.Y}}
	}
	return p
}

func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// Renumbered gives a lay whose pieces have other numbers: piece i becomes to[i]. It
// fails if there is no piece of that number.
func (l Lay) Renumbered(to []int) (Lay, error) {
	l.Places = slices.Clone(l.Places)
	for k, p := range l.Places {
		if p.Piece < 0 || p.Piece >= len(to) {
			return Lay{}, fmt.Errorf("there is no piece %d", p.Piece+1)
		}
		l.Places[k].Piece = to[p.Piece]
	}
	slices.SortStableFunc(l.Places, order)
	return l, nil
}
