package outline

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"seamwarden/dsl/finding"
)

// ReadDXF reads the pieces of a DXF file in which each block is a piece in one size and
// the layers mean what the pattern interchange practice ASTM D6673 says: 1 the cutting
// line, 2 its corners, 4 notches, 6 the mirror line, 7 the grain, 11 what is cut out
// inside, 13 drill holes, 15 text, 80 to 83 notches of other kinds. The others are left
// out: points of curves (3), lines of reference (5, 9, 10), lines inside (8) and the
// stitching line (14), which lies the allowance inside the cutting line. The layers'
// meanings are taken from a published list of them; the text of the standard was not at
// hand, and the words in which a file names piece, size and units ("Piece Name:",
// "Size:", "Units:") are recalled from memory.
//
// The standard has no names for edges. An annotation "Edge: NAME" names the edge, from
// corner to corner, to whose middle it stands nearest; that is our own agreement.
func ReadDXF(file string, src []byte) (*Drawing, []finding.Finding) {
	d := &dxf{text: lines{file: file, src: src}}
	d.notes.bad = !d.read()
	if d.notes.bad {
		return nil, d.notes.all()
	}
	out := &Drawing{}
	for _, b := range d.inOrder {
		d.piece(out, b)
	}
	if len(out.Pieces) == 0 && len(d.notes.list) == 0 {
		d.notes.add(noPieces(finding.Span{File: file}))
	}
	if d.notes.bad {
		return nil, d.notes.all()
	}
	return out, d.notes.all()
}

// mostLines bounds the size of a file.
const mostLines = 2_000_000

// dxf gathers the entities of each block.
type dxf struct {
	text    lines
	notes   notes
	units   float64 // millimetres in a unit, 0 if it is not said
	inOrder []*block
}

// block is a piece in one size.
type block struct {
	name     string
	entities []*entity
	at       finding.Span
}

// entity is one drawn thing: its points in drawing units, as DXF has them, y up.
type entity struct {
	kind   string
	layer  int
	points []Point
	bulges []float64 // of the stretch behind each point
	closed bool
	radius float64
	angles [2]float64 // of an arc, in degrees, from the x axis towards y, counter-clockwise
	text   string
	at     finding.Span
}

// lines gives the pairs of a DXF file: a line with a code, then one with a value.
type lines struct {
	file string
	src  []byte
	from int // where the next line begins
	line int // its number, from 1
}

// pair is a code with its value.
type pair struct {
	code  int
	value string
	at    finding.Span
}

func (l *lines) next() (text string, at finding.Span, ok bool) {
	if l.from >= len(l.src) {
		return "", at, false
	}
	l.line++
	raw := l.src[l.from:]
	if i := bytes.IndexByte(raw, '\n'); i >= 0 {
		raw = raw[:i]
	}
	text = strings.TrimSpace(string(raw))
	lead := bytes.Index(raw, []byte(text))
	at.File = l.file
	at.Start = finding.Pos{Offset: l.from + lead, Line: l.line, Column: utf8.RuneCount(raw[:lead]) + 1}
	at.End = finding.Pos{Offset: at.Start.Offset + len(text), Line: l.line, Column: at.Start.Column + utf8.RuneCountInString(text)}
	l.from += len(raw) + 1
	return text, at, true
}

// pair reads a code and its value; false at the end, or where there is no code, which
// gives a finding.
func (d *dxf) pair() (p pair, ok bool) {
	code, at, ok := d.text.next()
	if !ok || d.text.line > mostLines {
		return p, false
	}
	n, err := strconv.Atoi(code)
	if err != nil {
		if code == "" && d.text.from >= len(d.text.src) {
			return p, false
		}
		d.notes.add(notCode(at, code))
		return p, false
	}
	p.code = n
	p.value, p.at, ok = d.text.next()
	if !ok {
		d.notes.add(cutShort(at))
	}
	return p, ok
}

// read goes through the sections; false if the file cannot be read.
func (d *dxf) read() bool {
	if bytes.HasPrefix(d.text.src, []byte("AutoCAD Binary DXF")) || bytes.IndexByte(d.text.src, 0) >= 0 {
		d.notes.add(binaryDXF(finding.Span{File: d.text.file}))
		return false
	}
	var in *block
	var last *entity
	loose := &block{} // what stands in no block
	setting, met := "", false
	for {
		p, ok := d.pair()
		if !ok {
			break
		}
		met = met || p.code == 0
		switch {
		case p.code == 0:
			setting, last = "", d.begin(p, &in, loose, last)
		case p.code == 9:
			setting, last = p.value, nil
		case last != nil && last.kind == "BLOCK":
			if p.code == 2 && in != nil && in.name == "" {
				in.name = p.value
			}
		case last != nil:
			d.property(last, p)
		case setting == "$INSUNITS" && p.code == 70:
			d.units = insunits[p.value]
		}
	}
	if !met && len(d.notes.list) == 0 {
		d.notes.add(noPieces(finding.Span{File: d.text.file}))
	}
	d.declared(loose)
	return len(d.notes.list) == 0
}

// insunits are the millimetres in a unit of $INSUNITS: 1 inch, 2 foot, 4 millimetre,
// 5 centimetre, 6 metre (DXF reference, header variables).
var insunits = map[string]float64{"1": 25.4, "2": 304.8, "4": 1, "5": 10, "6": 1000}

// begin takes the start of a thing. A VERTEX belongs to the polyline before it.
func (d *dxf) begin(p pair, in **block, loose *block, last *entity) *entity {
	to := *in
	if to == nil {
		to = loose
	}
	switch p.value {
	case "BLOCK":
		*in = &block{at: p.at}
		d.inOrder = append(d.inOrder, *in)
		return &entity{kind: "BLOCK"}
	case "ENDBLK", "ENDSEC", "EOF":
		*in = nil
		return nil
	case "VERTEX":
		if last != nil && last.kind == "POLYLINE" {
			last.points, last.bulges = append(last.points, Point{}), append(last.bulges, 0)
			return last
		}
	case "SEQEND":
		return nil
	case "LINE", "POLYLINE", "LWPOLYLINE", "ARC", "CIRCLE", "POINT", "TEXT":
		e := &entity{kind: p.value, at: p.at}
		if p.value != "POLYLINE" && p.value != "LWPOLYLINE" {
			e.points = make([]Point, 2)
		}
		to.entities = append(to.entities, e)
		return e
	}
	return &entity{} // something else: what is said of it goes nowhere
}

// property takes one value of an entity.
func (d *dxf) property(e *entity, p pair) {
	if p.code == 1 {
		e.text = p.value
		return
	}
	if p.code == 8 {
		if n, err := strconv.Atoi(p.value); err == nil && (e.kind != "POLYLINE" || len(e.points) == 0) {
			e.layer = n
		}
		return
	}
	if p.code < 10 || p.code > 79 || e.kind == "" {
		return
	}
	v, err := strconv.ParseFloat(p.value, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		d.notes.add(notNumber(p.at, p.value))
		return
	}
	e.number(p.code, v)
}

func (e *entity) number(code int, v float64) {
	if e.kind == "LWPOLYLINE" && code == 10 {
		e.points, e.bulges = append(e.points, Point{}), append(e.bulges, 0)
	}
	if code == 70 && (e.kind == "LWPOLYLINE" || len(e.points) == 0) {
		e.closed = int(v)&1 == 1
	}
	n := len(e.points)
	if n == 0 {
		return // of a POLYLINE before its first vertex
	}
	first, second := n-1, n-1
	if e.bulges == nil {
		first, second = 0, 1
	}
	switch code {
	case 10:
		e.points[first].X = v
	case 20:
		e.points[first].Y = v
	case 11:
		e.points[second].X = v
	case 21:
		e.points[second].Y = v
	case 40:
		e.radius = v
	case 50, 51:
		e.angles[code-50] = v
	case 42:
		if e.bulges != nil {
			e.bulges[first] = v
		}
	}
}

// declared looks for the units in text outside the pieces, if the header has none.
func (d *dxf) declared(loose *block) {
	for _, e := range loose.entities {
		if v, ok := said(e, "units"); ok && d.units == 0 {
			switch strings.ToLower(v) {
			case "metric":
				d.units = 1
			case "english", "imperial":
				d.units = 25.4
			}
		}
	}
}

// said parts a text such as "Size: 12" and looks whether it tells a thing.
func said(e *entity, what string) (string, bool) {
	key, v, ok := strings.Cut(e.text, ":")
	return strings.TrimSpace(v), ok && e.kind == "TEXT" && strings.EqualFold(strings.TrimSpace(key), what)
}
