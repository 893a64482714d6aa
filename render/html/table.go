package html

import (
	"fmt"
	"html/template"
	"strings"

	"seamwarden/compiler/booklet"
)

type tableView struct {
	ID, LabelID, Caption string
	Width                int // columns
	Head                 []cellView
	Bodies               []bodyView
}

// bodyView is a run of rows, with the group row that heads it, if any.
type bodyView struct {
	Head *cellView
	Rows [][]cellView
}

// cellView is one cell. Heads marks a row's heading. Said is read aloud only: it
// names a tick box whose own cell is empty.
type cellView struct {
	Text                 template.HTML
	Art                  []template.HTML // small drawings
	Numeric, Heads, Tick bool
	When, Said           string
}

// table sets a table in a frame that scrolls sideways where the screen is too
// narrow. The frame takes its name from the caption, or from the heading above.
func (p *page) table(t *booklet.Table) (template.HTML, error) {
	if len(t.Columns) == 0 {
		return "", fmt.Errorf("table %q has no columns", t.Caption)
	}
	v := tableView{ID: t.ID, LabelID: p.label, Caption: t.Caption, Width: len(t.Columns)}
	if t.Caption != "" {
		v.LabelID = p.ids.fresh("caption")
	}
	for _, c := range t.Columns {
		text, err := p.inline(c.Head)
		if err != nil {
			return "", err
		}
		v.Head = append(v.Head, cellView{Text: text, Numeric: c.Numeric})
	}
	for i := range t.Rows {
		if err := p.addRow(&v, t, &t.Rows[i]); err != nil {
			return "", fmt.Errorf("table %q, row %d: %w", t.Caption, i+1, err)
		}
	}
	return p.fill("table", v)
}

// addRow puts a row into the body that is open; a group row opens the next.
func (p *page) addRow(v *tableView, t *booklet.Table, r *booklet.Row) error {
	want := len(t.Columns)
	if r.Group {
		want = 1
	}
	if len(r.Cells) != want {
		return fmt.Errorf("it has %d cells where %d belong", len(r.Cells), want)
	}
	cells, err := p.cells(t, r)
	if err != nil {
		return err
	}
	if r.Group {
		v.Bodies = append(v.Bodies, bodyView{Head: &cells[0]})
		return nil
	}
	if len(v.Bodies) == 0 {
		v.Bodies = []bodyView{{}}
	}
	last := &v.Bodies[len(v.Bodies)-1]
	last.Rows = append(last.Rows, cells)
	return nil
}

func (p *page) cells(t *booklet.Table, r *booklet.Row) ([]cellView, error) {
	cells := make([]cellView, len(r.Cells))
	for i, c := range r.Cells {
		text, err := p.inline(c.Text)
		if err != nil {
			return nil, err
		}
		cells[i] = cellView{Text: text, Numeric: !r.Group && t.Columns[i].Numeric}
		for _, f := range c.Figures {
			art, err := p.drawing(f)
			if err != nil {
				return nil, err
			}
			cells[i].Art = append(cells[i].Art, art)
		}
	}
	cells[whenCell(t, r)].When = r.When
	cells[0].Heads = t.RowHead && cells[0].Text != ""
	cells[0].Tick = r.Tick
	if r.Tick && cells[0].Text == "" {
		cells[0].Said = plainRow(r)
	}
	return cells, nil
}

// whenCell is the cell that also says for which garments the row holds: the
// first with words in it rather than a figure.
func whenCell(t *booklet.Table, r *booklet.Row) int {
	for i := range r.Cells {
		if r.Group || !t.Columns[i].Numeric {
			return i
		}
	}
	return 0
}

func plainRow(r *booklet.Row) string {
	var words []string
	for _, c := range r.Cells {
		if s := strings.TrimSpace(booklet.Plain(c.Text)); s != "" {
			words = append(words, s)
		}
	}
	return strings.Join(words, ", ")
}
