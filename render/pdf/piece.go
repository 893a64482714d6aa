package pdf

// cost is how bad it is to begin a new page after a piece.
type cost int

const (
	free   cost = iota
	soft        // inside a step that would fit on one page
	firm        // inside a caution, or between a table's parts
	strong      // would leave one line alone, or part a name from what it names
	never       // between a heading and what it heads
)

// piece is a strip across the column that no page break divides. Its marks have
// their final x; their y counts from the piece's top.
type piece struct {
	height  float64
	gap     float64 // space above; none at the top of a page
	below   float64 // space below, where the next piece asks for less
	need    float64 // room that must be on the page, from the piece's top
	after   cost
	newPage bool // begins a page
	marks   []mark
	anchors []string // the ids that lead here
	chapter string   // the title for the running head
	head    *piece   // stands above the piece where it begins a page
	frames  []*frame // what is drawn round it and its neighbours
}

// frame is a box round pieces, or a bar at their left.
type frame struct {
	area        column
	bar         bool
	line        float64 // thickness
	first, last *piece
}

// tornPad is the room between text and box where a page's end divides a box.
const tornPad = 5

func (f *frame) mark(top, bottom float64, hasFirst, hasLast bool) mark {
	if f.bar {
		return ruleMark(f.area.x, top, f.area.x, bottom, f.line)
	}
	if !hasFirst {
		top -= tornPad
	}
	if !hasLast {
		bottom += tornPad
	}
	return boxMark(rect{f.area.x, top, f.area.width, bottom - top}, f.line)
}

// spacer tells whether the piece is only room, which a page's end swallows.
func (p *piece) spacer() bool { return p.height == 0 && len(p.marks) == 0 && len(p.anchors) == 0 }

// gapAfter gives the room between a piece and the one before it on the page.
func (p *piece) gapAfter(prev *piece) float64 { return max(p.gap, prev.below) }

// extent gives the height of pieces on one page.
func extent(ps []*piece) float64 {
	h := 0.0
	for i, p := range ps {
		if i > 0 {
			h += p.gapAfter(ps[i-1])
		}
		h += p.height
	}
	return h
}

// keep makes every break inside the pieces cost c at least.
func keep(ps []*piece, c cost) {
	for _, p := range ps[:max(0, len(ps)-1)] {
		p.after = max(p.after, c)
	}
}

// space sets the room above and below pieces.
func space(ps []*piece, above, below float64) {
	if len(ps) == 0 {
		return
	}
	ps[0].gap = max(ps[0].gap, above)
	last := ps[len(ps)-1]
	last.below = max(last.below, below)
}

// anchor makes an id lead to the first of the pieces.
func anchor(ps []*piece, id string) {
	if len(ps) > 0 && id != "" {
		ps[0].anchors = append(ps[0].anchors, id)
	}
}

// enclose puts a frame round pieces, with room inside it above and below.
func enclose(ps []*piece, f *frame, pad float64) {
	if len(ps) == 0 {
		return
	}
	for _, p := range ps {
		p.frames = append(p.frames, f)
	}
	f.first, f.last = ps[0], ps[len(ps)-1]
	f.first.marks = shiftAll(f.first.marks, 0, pad)
	f.first.height += pad
	f.last.height += pad
}

// beside puts marks, height high, next to pieces, from the top of the first.
func beside(ps []*piece, marks []mark, height float64) []*piece {
	if len(ps) == 0 {
		ps = []*piece{{}}
	}
	first := ps[0]
	first.marks = append(first.marks, marks...)
	if len(ps) == 1 {
		first.height = max(first.height, height)
		return ps
	}
	first.need = max(first.need, height)
	if rest := height - extent(ps); rest > 0 {
		last := ps[len(ps)-1]
		pad := &piece{gap: rest, after: last.after, below: last.below, frames: last.frames}
		last.after, last.below = strong, 0
		ps = append(ps, pad)
	}
	return ps
}
