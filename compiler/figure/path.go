package figure

import "strings"

// pathReader turns path data (SVG 1.1, 8.3; SVG 2, 9.3) into absolute commands.
// Every subpath that it gives begins with an M, also after a Z.
type pathReader struct {
	scanner
	out      []Command
	most     int     // commands that may still be made
	step     float64 // the largest part of a turn that is one curve
	cur      Point   // where the pen is
	start    Point   // where this subpath began
	open     bool    // a subpath is begun and not yet closed
	control  Point   // the last control point, for S and T
	previous byte    // the last command in capitals, 0 before the first
}

// arguments says how many numbers a command takes; -1 if there is no such command.
func arguments(op byte) int {
	switch op {
	case 'Z':
		return 0
	case 'H', 'V':
		return 1
	case 'M', 'L', 'T':
		return 2
	case 'S', 'Q':
		return 4
	case 'C':
		return 6
	case 'A':
		return 7
	}
	return -1
}

// tooMany is the fault of a path that would pass the limit of commands.
var tooMany = &fault{0, "there are too many commands"}

// parsePath reads the d attribute. An empty one, or "none", is a path that
// draws nothing. The commands stand in room, if they fit.
func parsePath(d string, most int, step float64, room []Command) ([]Command, *fault) {
	const usual = 1000 // more are not made room for before they are read
	if n := min(letters(d), most, usual); n > cap(room) {
		room = make([]Command, 0, n)
	}
	p := pathReader{scanner: scanner{s: d}, most: most, step: step, out: room[:0]}
	p.space()
	if p.rest() == "none" {
		return nil, nil
	}
	for !p.done() {
		if bad := p.command(); bad != nil {
			return nil, bad
		}
		p.space()
	}
	return p.out, nil
}

// letters counts the letters of path data, of which each is a command, at the least.
func letters(d string) (n int) {
	for i := range len(d) {
		if isLetter(d[i]) {
			n++
		}
	}
	return n
}

// command reads a letter and all sets of numbers after it.
func (p *pathReader) command() *fault {
	letter := p.peek()
	op := upper(letter)
	relative := letter != op
	count := arguments(op)
	switch {
	case count < 0:
		return &fault{p.i, "“" + p.nextRune() + "” does not belong here: a command letter of path data was expected"}
	case p.previous == 0 && op != 'M':
		return &fault{p.i, "path data begins with M, which says where the line starts"}
	}
	p.i++
	if op == 'Z' {
		return p.finish(op, p.close())
	}
	p.space()
	for {
		bad := p.set(op, count, relative)
		if bad != nil {
			return bad
		}
		if op == 'M' { // further pairs after M are lines
			op = 'L'
		}
		comma := p.comma()
		if !p.startsNumber() {
			if comma {
				return &fault{p.i - 1, "after this comma a number is missing"}
			}
			return nil
		}
	}
}

// set reads one set of numbers and draws with it.
func (p *pathReader) set(op byte, count int, relative bool) *fault {
	var v [7]float64
	for k := 0; k < count; k++ {
		if k > 0 {
			p.comma()
		}
		n, ok := p.argument(op, k)
		if !ok {
			return &fault{p.i, missing(op, k, count)}
		}
		v[k] = n
	}
	if relative {
		p.shift(op, v[:count])
	}
	return p.finish(op, p.draw(op, v))
}

// argument reads the number k of a command. The fourth and fifth of an arc are flags.
func (p *pathReader) argument(op byte, k int) (float64, bool) {
	if op == 'A' && (k == 3 || k == 4) {
		return p.flag()
	}
	return p.number()
}

// missing words what a command lacks when its number k could not be read.
func missing(op byte, k, count int) string {
	names := [...]string{"no number", "one number", "two numbers", "three numbers", "four numbers", "five numbers", "six numbers", "seven numbers"}
	if op == 'A' && (k == 3 || k == 4) {
		return "here 0 or 1 was expected: the fourth and fifth number of an arc are flags"
	}
	return "here a number was expected: " + string(op) + " takes " + names[count]
}

// shift makes relative numbers absolute.
func (p *pathReader) shift(op byte, v []float64) {
	switch op {
	case 'H':
		v[0] += p.cur.X
	case 'V':
		v[0] += p.cur.Y
	case 'A':
		v[5], v[6] = v[5]+p.cur.X, v[6]+p.cur.Y
	default:
		for k := 0; k < len(v); k += 2 {
			v[k], v[k+1] = v[k]+p.cur.X, v[k+1]+p.cur.Y
		}
	}
}

// draw carries out one command with absolute numbers; it is false when there
// are too many.
func (p *pathReader) draw(op byte, v [7]float64) bool {
	switch op {
	case 'M':
		return p.move(Point{v[0], v[1]})
	case 'L':
		return p.line(Point{v[0], v[1]})
	case 'H':
		return p.line(Point{v[0], p.cur.Y})
	case 'V':
		return p.line(Point{p.cur.X, v[0]})
	case 'C':
		return p.cubic(Point{v[0], v[1]}, Point{v[2], v[3]}, Point{v[4], v[5]})
	case 'S':
		return p.cubic(p.mirrored('C', 'S'), Point{v[0], v[1]}, Point{v[2], v[3]})
	case 'Q':
		return p.quadratic(Point{v[0], v[1]}, Point{v[2], v[3]})
	case 'T':
		return p.quadratic(p.mirrored('Q', 'T'), Point{v[0], v[1]})
	case 'A':
		return p.arc(arc{rx: v[0], ry: v[1], turn: v[2], large: v[3] == 1, sweep: v[4] == 1, to: Point{v[5], v[6]}})
	}
	return true
}

// finish notes what S and T look back at.
func (p *pathReader) finish(op byte, ok bool) *fault {
	p.previous = op
	if !ok {
		return tooMany
	}
	return nil
}

func (p *pathReader) add(op byte, pts ...Point) bool {
	if len(p.out) >= p.most {
		return false
	}
	c := Command{Op: op}
	copy(c.Points[:], pts)
	p.out = append(p.out, c)
	return true
}

func (p *pathReader) move(to Point) bool {
	p.cur, p.start, p.open = to, to, true
	return p.add('M', to)
}

// reopen begins a subpath of its own after a Z (SVG 1.1, 8.3.3).
func (p *pathReader) reopen() bool {
	if p.open {
		return true
	}
	p.open = true
	return p.add('M', p.start)
}

func (p *pathReader) line(to Point) bool {
	p.cur = to
	return p.reopen() && p.add('L', to)
}

func (p *pathReader) cubic(c1, c2, to Point) bool {
	p.control, p.cur = c2, to
	return p.reopen() && p.add('C', c1, c2, to)
}

// quadratic raises the degree: each control point of the cubic lies two thirds
// of the way from an end to the quadratic's one.
func (p *pathReader) quadratic(c, to Point) bool {
	from := p.cur
	ok := p.cubic(between(from, c, 2./3), between(to, c, 2./3), to)
	p.control = c
	return ok
}

func (p *pathReader) arc(a arc) bool {
	if p.cur == a.to {
		return true
	}
	ok := p.reopen()
	for _, c := range a.cubics(p.cur, p.step) {
		ok = ok && p.add(c.Op, c.Points[:]...)
	}
	p.cur = a.to
	return ok
}

func (p *pathReader) close() bool {
	p.cur = p.start
	if !p.open {
		return true
	}
	p.open = false
	return p.add('Z')
}

// mirrored reflects the last control point in the pen's place if the command
// before was a curve of the same kind; otherwise it is the pen's place.
func (p *pathReader) mirrored(kinds ...byte) Point {
	if strings.IndexByte(string(kinds), p.previous) < 0 {
		return p.cur
	}
	return Point{2*p.cur.X - p.control.X, 2*p.cur.Y - p.control.Y}
}

// between is the point the share t of the way from a to b.
func between(a, b Point, t float64) Point {
	return Point{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t}
}

// nextRune quotes the character at which reading stopped.
func (s *scanner) nextRune() string {
	for _, r := range s.s[s.i:] {
		return string(r)
	}
	return ""
}

func upper(c byte) byte {
	if c >= 'a' && c <= 'z' {
		return c - 'a' + 'A'
	}
	return c
}

func isLetter(c byte) bool { return upper(c) >= 'A' && upper(c) <= 'Z' }
