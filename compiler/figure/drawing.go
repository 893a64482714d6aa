// Package figure reads SVG line art into a small drawing model and writes it
// back as clean SVG.
//
// In: the bytes of an SVG file. Out: a [Drawing] that both renderers can set, or
// problems with their places. Only what the model can hold survives, so a script
// or an outside link in a file can never reach a page. It does not know pieces.
//
// The price of that is a small model: no pictures, gradients, clipping or see-
// through colours. Each of them gives a finding that says what to draw instead.
//
// A file goes through in one pass of XML tokens and a stack of open elements
// (read.go, element.go, root.go; plain.go cuts most files into tokens); attributes have small grammars of their own
// (scan.go, path.go, matrix.go, style.go, setter.go, property.go); words.go holds the
// wording of every finding.
package figure

// Drawing is line art in its own coordinates: x to the right, y down, the view
// box from (0, 0) to (Width, Height). NaturalWidth is the width in millimetres
// at which it is meant to be printed, 0 if the file does not say.
type Drawing struct {
	Width, Height float64
	NaturalWidth  float64
	Title, Desc   string
	Items         []Item
}

// Item is a *Path or a *Label. Coordinates are final: transforms are applied.
type Item interface{ item() }

// Path is a shape. Commands are absolute; curves are cubic; arcs are converted.
// Every subpath begins with an M, also after a Z. The mitre limit is always 4,
// which is SVG's default and not PDF's. A dash list of odd length is run through
// twice, in SVG as in PDF. Without a stroke, Width, Dash, Cap and Join have
// their zero or usual values; from [Read], a path paints something.
type Path struct {
	Commands  []Command
	Fill      Paint
	EvenOdd   bool
	Stroke    Paint
	Width     float64   // stroke width in drawing units
	Dash      []float64 // in drawing units; nil is solid
	DashStart float64
	Cap, Join string // "butt", "round", "square"; "miter", "round", "bevel"
}

// Command is 'M', 'L', 'C' or 'Z' with its points: 1, 1, 3 or none.
type Command struct {
	Op     byte
	Points [3]Point
}

// Point is a place in drawing units.
type Point struct{ X, Y float64 }

// Paint is a colour, or none.
type Paint struct {
	None    bool
	R, G, B uint8
}

// Label is a line of text at its baseline. Anchor is "start", "middle" or "end";
// Angle turns it clockwise about At, in degrees over -180 up to 180. Text is one
// line without line breaks; its typeface is the renderer's.
type Label struct {
	At     Point
	Text   string
	Size   float64 // in drawing units
	Anchor string
	Angle  float64
	Bold   bool
	Italic bool
	Fill   Paint
}

func (*Path) item()  {}
func (*Label) item() {}
