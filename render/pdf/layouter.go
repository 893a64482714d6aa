package pdf

import (
	"fmt"
	"strings"

	"seamwarden/compiler/booklet"
)

// layouter turns blocks into pieces.
type layouter struct {
	set     *setter
	th      theme
	sheet   sheet
	labels  booklet.Labels
	gutter  float64 // width of the tick box and the number before a step
	outline []entry
}

// entry is a chapter or a heading, for the contents and the bookmarks.
type entry struct {
	title string
	level int // 0 is a chapter
	id    string
}

func newLayouter(b *booklet.Booklet, sh sheet) (*layouter, error) {
	set, err := newSetter()
	if err != nil {
		return nil, err
	}
	l := &layouter{set: set, th: newTheme(), sheet: sh, labels: b.Labels}
	l.gutter = l.stepGutter(b)
	return l, nil
}

// tallest is the height above which something is divided, although it should
// stand on one page: the page less the room that headings before it may take.
func (l *layouter) tallest() float64 { return l.sheet.bodyHeight() - 150 }

// booklet lays out everything, in reading order. The chapters come first because
// the contents list what is in them.
func (l *layouter) booklet(b *booklet.Booklet) ([]*piece, error) {
	var chapters []*piece
	for i := range b.Chapters {
		ps, err := l.chapter(&b.Chapters[i])
		if err != nil {
			return nil, fmt.Errorf("chapter “%s”: %w", b.Chapters[i].Title, err)
		}
		chapters = append(chapters, ps...)
	}
	cover, err := l.cover(b)
	if err != nil {
		return nil, fmt.Errorf("cover: %w", err)
	}
	flow := append(cover, l.contents()...)
	if len(chapters) > 0 {
		chapters[0].newPage = true
	}
	return append(flow, chapters...), nil
}

func (l *layouter) chapter(c *booklet.Chapter) ([]*piece, error) {
	head := l.headingPieces(c.Title, l.th.chapter, l.sheet.body())
	if len(head) == 0 {
		head = []*piece{{}}
	}
	id := l.record(c.Title, 0, c.ID)
	anchor(head, id)
	space(head, 34, 10)
	head[0].need = l.sheet.bodyHeight() / 4 // no chapter begins at a page's foot
	rule := ruleMark(l.sheet.left, 0, l.sheet.left+l.sheet.body().width, 0, l.th.heavy)
	head[0].marks = append([]mark{rule}, shiftAll(head[0].marks, 0, 8)...)
	head[0].height += 8
	body, err := l.blocks(c.Blocks, l.sheet.body())
	if err != nil {
		return nil, err
	}
	ps := append(head, body...)
	for _, p := range ps {
		p.chapter = c.Title
	}
	return ps, nil
}

// record notes a heading and gives the id by which it is found; one without an
// id of its own gets one that no author can write.
func (l *layouter) record(title string, level int, id string) string {
	if id == "" {
		id = fmt.Sprintf("\x00%d", len(l.outline))
	}
	l.outline = append(l.outline, entry{title, level, id})
	return id
}

// headingPieces sets a heading, one piece a line, none of them left alone.
func (l *layouter) headingPieces(title string, ts textStyle, c column) []*piece {
	ps := l.textPieces(l.breakText(title, ts, c.width), ts, c)
	for _, p := range ps {
		p.after = never
	}
	return ps
}

// breakText sets plain text in lines.
func (l *layouter) breakText(text string, ts textStyle, width float64) []line {
	lines, _ := l.lines([]booklet.Inline{booklet.Text(text)}, ts, width) // plain text cannot fail
	return lines
}

func (l *layouter) lines(in []booklet.Inline, ts textStyle, width float64) ([]line, error) {
	a, err := l.set.atoms(in, ts.style)
	if err != nil {
		return nil, err
	}
	return breakLines(l.set, a, width), nil
}

// textPieces makes each line a piece and keeps the first two and the last two
// lines of a paragraph together.
func (l *layouter) textPieces(lines []line, ts textStyle, c column) []*piece {
	ps := make([]*piece, len(lines))
	for i, ln := range lines {
		ps[i] = &piece{height: ts.leading, marks: l.lineMarks(ln, ts, c, 0)}
		if len(lines) > 1 && (i == 0 || i == len(lines)-2) {
			ps[i].after = strong
		}
	}
	return ps
}

// lineMarks places a line whose top is at y.
func (l *layouter) lineMarks(ln line, ts textStyle, c column, y float64) []mark {
	x := c.x
	if ts.align == right {
		x += c.width - ln.width
	}
	base := y + l.baseline(ts)
	var ms []mark
	for _, r := range ln.runs {
		ms = append(ms, textMark{x: x, y: base, run: r})
		if r.link != "" {
			ms = append(ms, linkMark{rect{x, y, r.width, ts.leading}, r.link},
				ruleMark(x, base+1.8, x+r.width, base+1.8, l.th.hairline))
		}
		x += r.width
	}
	return ms
}

// baseline gives the distance from a line's top to its baseline.
func (l *layouter) baseline(ts textStyle) float64 {
	f := l.set.faces.pick(ts.style).text
	return (ts.leading + (f.ascent-f.descent)*ts.size) / 2
}

// blockMarks places lines one below the other, with the first line's top at y.
func (l *layouter) blockMarks(lines []line, ts textStyle, c column, y float64) []mark {
	var ms []mark
	for i, ln := range lines {
		ms = append(ms, l.lineMarks(ln, ts, c, y+float64(i)*ts.leading)...)
	}
	return ms
}

// continued is the mark that a table goes on from the page before.
func (l *layouter) continued() string {
	s := strings.TrimSpace(l.labels.Continued)
	if s == "" || strings.HasPrefix(s, "(") {
		return s
	}
	return "(" + s + ")"
}
