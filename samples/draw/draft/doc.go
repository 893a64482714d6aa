// Package draft draws pattern pieces: points, lines and curves on paper, put together
// into pieces with named edges and written as SVG in every size.
//
// In: the numbers of a garment. Out: a [Drawing], and from it the bytes of a file as
// the chapter "Outlines" of dsl/LANGUAGE.md tells it. It knows no garment.
//
// All is in millimetres, x to the right and y down, as on the paper. The edges of a
// piece run clockwise as it is seen. Curves are cubic Bézier curves. What is done here
// is plain geometry of the drawing board (common practice, no source).
package draft

import "math"

// Inch is an inch in millimetres.
const Inch = 25.4

// Point is a place, or the way from one place to another.
type Point struct{ X, Y float64 }

// At is the point of two numbers.
func At(x, y float64) Point { return Point{X: x, Y: y} }

// Plus adds a way to a place.
func (p Point) Plus(q Point) Point { return Point{X: p.X + q.X, Y: p.Y + q.Y} }

// Minus is the way from q to p.
func (p Point) Minus(q Point) Point { return Point{X: p.X - q.X, Y: p.Y - q.Y} }

// Times makes a way so many times as long.
func (p Point) Times(f float64) Point { return Point{X: p.X * f, Y: p.Y * f} }

// Length is how long a way is.
func (p Point) Length() float64 { return math.Hypot(p.X, p.Y) }

// Unit is the way of one millimetre in the same direction.
func (p Point) Unit() Point { return p.Times(1 / p.Length()) }

// Right is the way turned a quarter clockwise: of somebody who walks along an edge
// clockwise it points into the piece.
func (p Point) Right() Point { return Point{X: -p.Y, Y: p.X} }

// Left is the way turned a quarter the other way.
func (p Point) Left() Point { return Point{X: p.Y, Y: -p.X} }

// Turned is the way turned clockwise by so many degrees.
func (p Point) Turned(degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos}
}

// Toward is the place so many millimetres from p on the way to q.
func (p Point) Toward(q Point, mm float64) Point { return p.Plus(q.Minus(p).Unit().Times(mm)) }

// Between is the place that divides the way from p to q in this share: 0 is p, 1 is q.
func (p Point) Between(q Point, share float64) Point { return p.Plus(q.Minus(p).Times(share)) }

// Heading is the way of one millimetre in a direction, in degrees clockwise from the
// right: 0 is right, 90 down, 180 left, 270 up.
func Heading(degrees float64) Point { return At(1, 0).Turned(degrees) }

// The four ways along the sheet.
var (
	Rightward = At(1, 0)
	Downward  = At(0, 1)
	Leftward  = At(-1, 0)
	Upward    = At(0, -1)
)
