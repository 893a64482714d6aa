package model

// Operation is a row of the table of operations: what a verb acts on, what it
// does to it, and what a maker must look out for. The rules of sewing read this
// table; nothing else in the program knows a verb.
//
// Source: common practice of garment sewing, no standard.
type Operation struct {
	Verb  string
	Class Class
	On    []TargetKind // what may stand after the verb; empty: nothing has to
	Joins bool         // what it acts on becomes part of the garment
	Sews  bool         // it sews a declared seam, in one go or a stretch of it
	Shuts bool         // an edge it acts on needs nothing more
	Uses  string       // what it takes from stock: "objects", "with", "" for nothing
	Heat  bool         // an iron is used
	Blade bool         // scissors or a knife are used
	Means string       // what it is, for a person
}

// Class groups operations by what they are for.
type Class string

// The classes of operation.
const (
	Prepare  Class = "prepare"
	Shape    Class = "shape"
	JoinUp   Class = "join"
	Trim     Class = "trim"
	Press    Class = "press"
	Finish   Class = "finish"
	Close    Class = "close"
	Decorate Class = "decorate"
	Attach   Class = "attach"
)

var (
	seams   = []TargetKind{ToSeam}
	lines   = []TargetKind{ToSeam, ToEdge, ToPartEdge, ToPart, ToShaping, ToMark}
	edges   = []TargetKind{ToEdge, ToPartEdge, ToSeam}
	rows    = []TargetKind{ToSeam, ToEdge, ToPartEdge, ToPart, ToShaping, ToMark, ToPiece, ToBit} // what a row of stitching runs on
	pieces  = []TargetKind{ToPiece, ToPart, ToBit}
	items   = []TargetKind{ToPiece, ToPart, ToBit, ToNotion, ToEdge, ToPartEdge}
	stock   = []TargetKind{ToNotion, ToBit, ToPiece, ToPart}
	notions = []TargetKind{ToNotion, ToBit}
	any_    = []TargetKind{ToSeam, ToEdge, ToPartEdge, ToPart, ToPiece, ToShaping, ToMark, ToBit, ToNotion, ToGap, ToMaterial}
)

// Operations is the table, in the order of work.
var Operations = []Operation{
	{Verb: "mark", Class: Prepare, On: any_, Means: "Transfer a sign from the pattern to the cloth."},
	{Verb: "cut", Class: Prepare, On: any_, Blade: true, Means: "Cut cloth, tape or a thread."},
	{Verb: "lay", Class: Prepare, On: any_, Means: "Put layers on one another."},
	{Verb: "pin", Class: Prepare, On: any_, Means: "Hold layers with pins."},
	{Verb: "baste", Class: Prepare, On: any_, Means: "Hold layers with long stitches."},
	{Verb: "fuse", Class: Prepare, On: []TargetKind{ToPiece, ToPart}, Heat: true, Means: "Bond interfacing to the wrong side with heat."},
	{Verb: "staystitch", Class: Prepare, On: lines, Means: "Sew a row inside the allowance so that the edge keeps its length."},
	{Verb: "reinforce", Class: Prepare, On: lines, Means: "Sew short stitches where the cloth will be clipped."},
	{Verb: "set", Class: Attach, On: items, Joins: true, Uses: "objects", Means: "Put a part in its place."},

	{Verb: "gather", Class: Shape, On: lines, Means: "Draw an edge up on long stitches."},
	{Verb: "ease", Class: Shape, On: lines, Means: "Work a little extra length into a seam."},
	{Verb: "shirr", Class: Shape, On: any_, Means: "Gather in several rows."},
	{Verb: "pleat", Class: Shape, On: lines, Means: "Fold cloth over itself by a measured depth."},
	{Verb: "tuck", Class: Shape, On: lines, Means: "Sew a fold along its length."},
	{Verb: "fold", Class: Shape, On: any_, Means: "Fold cloth along a line."},
	{Verb: "roll", Class: Shape, On: any_, Means: "Roll an edge or a seam between the fingers."},
	{Verb: "overlap", Class: Shape, On: any_, Means: "Lay one edge over another."},
	{Verb: "turn", Class: Shape, On: []TargetKind{ToPiece, ToPart, ToBit, ToGap}, Means: "Bring the right side out."},

	{Verb: "sew", Class: JoinUp, On: []TargetKind{ToSeam, ToShaping}, Joins: true, Sews: true, Means: "Join edges, right sides together unless it is said otherwise."},
	{Verb: "join", Class: JoinUp, On: any_, Joins: true, Uses: "objects", Means: "Join the ends of a strip, tape or elastic."},
	{Verb: "fell", Class: JoinUp, On: lines, Shuts: true, Means: "Fold one allowance over the other and stitch it down."},
	{Verb: "slipstitch", Class: Close, On: []TargetKind{ToEdge, ToPartEdge, ToGap, ToSeam, ToPiece, ToPart}, Shuts: true, Means: "Sew a folded edge by hand with stitches that do not show."},
	{Verb: "close", Class: Close, On: any_, Shuts: true, Means: "Shut an opening that was left for turning."},

	{Verb: "trim", Class: Trim, On: lines, Blade: true, Means: "Cut an allowance narrower."},
	{Verb: "grade", Class: Trim, On: lines, Blade: true, Means: "Trim each layer of an allowance to a different width."},
	{Verb: "clip", Class: Trim, On: lines, Blade: true, Means: "Snip into an allowance so that it can spread."},
	{Verb: "notch out", Class: Trim, On: lines, Blade: true, Means: "Cut small wedges from an allowance so that it lies flat."},
	{Verb: "slash", Class: Trim, On: any_, Blade: true, Means: "Cut along a marked line inside a piece."},
	{Verb: "miter", Class: Trim, On: lines, Blade: true, Shuts: true, Means: "Fold or sew a corner at half its angle."},

	{Verb: "press", Class: Press, On: any_, Heat: true, Means: "Press with the iron."},
	{Verb: "press under", Class: Press, On: edges, Heat: true, Shuts: true, Means: "Fold an edge to the wrong side and press the fold."},
	{Verb: "steam", Class: Press, On: any_, Heat: true, Means: "Shape with steam, without pressing."},
	{Verb: "turn under", Class: Press, On: edges, Shuts: true, Means: "Fold an edge to the wrong side."},

	{Verb: "finish", Class: Finish, On: edges, Shuts: true, Means: "Stop a raw edge from fraying."},
	{Verb: "bind", Class: Finish, On: edges, Shuts: true, Uses: "with", Means: "Shut a raw edge in a folded strip."},
	{Verb: "cover", Class: Finish, On: any_, Shuts: true, Uses: "with", Means: "Lay a tape over a raw edge and stitch it down."},
	{Verb: "hem", Class: Finish, On: edges, Shuts: true, Heat: true, Means: "Turn an edge to the wrong side and stitch it."},
	{Verb: "level", Class: Prepare, On: edges, Blade: true, Means: "Let a hem hang out and trim it even."},

	{Verb: "understitch", Class: Decorate, On: lines, Means: "Stitch the allowances to the facing, close to the seam."},
	{Verb: "edgestitch", Class: Decorate, On: rows, Shuts: true, Means: "Sew a row close to an edge or a fold."},
	{Verb: "topstitch", Class: Decorate, On: rows, Means: "Sew a visible row from the right side."},
	{Verb: "stitch", Class: Decorate, On: any_, Joins: true, Means: "Sew a row through all that lies there."},
	{Verb: "ditch", Class: Decorate, On: lines, Means: "Sew in the groove of a seam and catch the layer below."},
	{Verb: "quilt", Class: Decorate, On: any_, Joins: true, Means: "Stitch through top, wadding and backing."},
	{Verb: "bar-tack", Class: Decorate, On: any_, Means: "Sew a short dense row at a point of strain."},

	{Verb: "apply", Class: Attach, On: items, Joins: true, Uses: "objects", Means: "Lay a part on another and stitch it on."},
	{Verb: "attach", Class: Attach, On: items, Joins: true, Uses: "objects", Means: "Fasten a part in its place."},
	{Verb: "insert", Class: Attach, On: items, Joins: true, Uses: "objects", Means: "Put a part or a zip between layers."},
	{Verb: "thread", Class: Attach, On: stock, Joins: true, Uses: "objects", Means: "Draw elastic or cord through a casing."},
	{Verb: "sew on", Class: Attach, On: stock, Joins: true, Uses: "objects", Means: "Sew a button or a fastening on by hand."},
	{Verb: "tack", Class: Attach, On: any_, Joins: true, Means: "Fix layers with a few stitches."},
	{Verb: "buttonhole", Class: Attach, Blade: true, Means: "Sew a finished slit for a button."},
	{Verb: "knot", Class: Attach, On: notions, Means: "Tie a knot."},
	{Verb: "test", Class: Attach, On: any_, Means: "Pull and turn it hard, to see that it holds."},
	{Verb: "open", Class: Prepare, On: any_, Means: "Open a zip or a seam."},
	{Verb: "remove", Class: Prepare, On: any_, Means: "Take out stitches or pins."},
}

var operationByVerb = func() map[string]*Operation {
	m := map[string]*Operation{}
	for i := range Operations {
		m[Operations[i].Verb] = &Operations[i]
	}
	return m
}()

// Techniques are the ways of finishing and stitching that can follow `with`
// without being declared.
var Techniques = []string{"overlock", "zigzag", "pinking", "overcasting", "hand-stitches", "straight-stitch", "twin-needle", "catch-stitch",
	"blind-stitch", "ladder-stitch", "running-stitch", "backstitch", "fell-stitch", "blanket-stitch", "box-stitch", "tailor-tacks", "chalk"}

// directions are the words that can follow `toward` without being declared.
var directions = []string{"centre", "center", "hem", "waist", "neck", "front", "back", "up", "down", "side", "body", "inside", "outside"}
