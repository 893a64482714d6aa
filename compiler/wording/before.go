package wording

import (
	"sort"
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// before makes the chapter that is read first: how the booklet works, the
// allowances, pressing and finishing, and what to take care of.
func (w *writer) before() *booklet.Chapter {
	ch := w.chapter("before")
	b := w.ph.Before
	if example := w.exampleGuard(); example != "" {
		ch.Blocks = append(ch.Blocks, para(fill(b["how"], filling{"example": plain(example)})))
	} else {
		ch.Blocks = append(ch.Blocks, para(plain(b["how-one"])))
	}
	ch.Blocks = append(ch.Blocks, para(plain(b["both-units"])))
	if w.hasFigures() {
		ch.Blocks = append(ch.Blocks, para(plain(b["shades"])))
	}
	ch.Blocks = append(ch.Blocks, w.choicesOffered()...)
	ch.Blocks = append(ch.Blocks, w.allowances()...)
	ch.Blocks = append(ch.Blocks, w.finishing()...)
	ch.Blocks = append(ch.Blocks, w.cautions()...)
	return ch
}

// exampleGuard finds a condition that the booklet prints, to explain them by.
func (w *writer) exampleGuard() string {
	for _, s := range w.Steps() {
		if w.there(s.Cond) {
			if at := w.when(s.Cond); at != "" {
				return at
			}
		}
	}
	return ""
}

// choicesOffered lists what is left to choose, with what the author says of it.
func (w *writer) choicesOffered() []booklet.Block {
	b := w.ph.Before
	l := &booklet.List{}
	item := func(head string, c condition.Cond, notes []*model.Prose) {
		text := plain(head)
		if at := w.when(c); at != "" && at != head {
			text = add(text, w.note(at)...)
		}
		blocks := []booklet.Block{para(text)}
		for _, n := range notes {
			if w.there(n.Cond) {
				blocks = append(blocks, w.prose(n)...)
			}
		}
		l.Items = append(l.Items, blocks)
	}
	open := func(v condition.VarID) bool { return int(v) >= len(w.chosen) || w.chosen[v] < 0 }
	for _, v := range w.Views {
		if w.there(v.Cond) && (len(w.Views) > 1 || len(v.Notes) > 0) {
			name := put(b["view"], "v", v.ID)
			if v.Name != "" {
				name += ": " + lower(v.Name)
			}
			item(name, condition.True, v.Notes)
		}
	}
	for _, o := range w.Options {
		if w.there(o.Cond) && open(o.Var) {
			item(put(b["option"], "o", o.Name), o.Cond, o.Notes)
		}
	}
	for _, c := range w.Choices {
		if !w.there(c.Cond) || !open(c.Var) {
			continue
		}
		var ways [][]booklet.Inline
		for _, v := range c.Values {
			ways = append(ways, plain(v.Name))
		}
		item(put(put(b["ways"], "c", c.Name), "ways", booklet.Plain(list(ways, b["or"]))), c.Cond, c.Notes)
	}
	if len(l.Items) == 0 {
		return nil
	}
	return []booklet.Block{w.heading(b["choices"]), para(plain(b["choices-intro"])), l}
}

func (w *writer) hasFigures() bool {
	for _, s := range w.Steps() {
		for _, i := range s.Items {
			if f, ok := i.(*model.Figure); ok && f.Art != nil && w.there(f.Cond) && w.there(s.Cond) {
				return true
			}
		}
	}
	return false
}

// allowances tells the common allowance and each exception.
func (w *writer) allowances() []booklet.Block {
	b := w.ph.Before
	out := []booklet.Block{w.heading(b["allowances"])}
	if w.Pattern.Allow != nil {
		out = append(out, para(fill(b["common"], filling{"m": w.amount(w.Pattern.Allow)})))
	}
	t := &booklet.Table{ID: w.id("table", "allowances"), Caption: strings.TrimSuffix(b["exceptions"], ":"), RowHead: true,
		Columns: []booklet.Column{{Head: plain(b["exception-seam"])}, {Head: plain(b["exception-allowance"])}}}
	if w.Pattern.Allow == nil {
		t.Caption = b["none-common"]
	}
	for _, s := range w.Seams {
		if !w.there(s.Cond) || !s.Own || s.Allow != nil && w.Pattern.Allow != nil && s.Allow.Length == w.Pattern.Allow.Length && s.AllowTo == nil {
			continue
		}
		cell := plain(b["no-allowance"])
		if s.Allow != nil {
			cell = w.amount(s.Allow)
		}
		if s.AllowTo != nil {
			cell = add(add(cell, booklet.Text(" / ")), w.amount(s.AllowTo)...)
		}
		t.Rows = append(t.Rows, booklet.Row{When: w.when(s.Cond), Cells: []booklet.Cell{{Text: plain(upper(strings.TrimPrefix(w.seam(s, false), "the ")))}, {Text: cell}}})
	}
	if len(t.Rows) > 0 {
		out = append(out, t)
	}
	if len(out) == 1 {
		return nil
	}
	return out
}

func (w *writer) finishing() []booklet.Block {
	p := w.Finish
	if p == nil || p.With == "" {
		return nil
	}
	b := w.ph.Before
	key := "finish-together"
	if p.Apart {
		key = "finish-apart"
	}
	text := fill(b[key], filling{"w": plain(w.word(w.ph.Techniques, p.With))})
	switch {
	case p.Open:
		text = add(text, booklet.Text(b["and-open"]))
	case p.Toward != "":
		text = add(text, fill(b["and-toward"], filling{"t": plain(w.word(w.ph.Directions, p.Toward))})...)
	default:
		text = add(text, booklet.Text("."))
	}
	return []booklet.Block{w.heading(b["finishing"]), para(text)}
}

// cautions prints the designer's, and the usual ones of each hazard that the
// steps bring and no caution of hers speaks of.
func (w *writer) cautions() []booklet.Block {
	out := []booklet.Block{w.heading(w.ph.Before["cautions"])}
	said, told := "", map[string]bool{}
	for _, c := range w.Cautions {
		if w.there(c.Cond) {
			out = append(out, w.guarded(w.when(c.Cond), []booklet.Block{w.caution(c)})...)
			told[c.About] = true
			said += strings.ToLower(c.Text.Text) + " "
		}
	}
	brings := w.hazards()
	for _, name := range sortedNames(w.ph.Hazards) {
		h := w.ph.Hazards[name]
		if brings[name] && !told[name] && !mentions(said, h.Seek) {
			out = append(out, &booklet.Caution{Signal: w.ph.Signals[h.Signal], Text: plain(h.Say)})
		}
	}
	if len(out) == 1 {
		return nil
	}
	return append(out, para(plain(w.ph.SignalNote)))
}

func mentions(text string, words []string) bool {
	for _, word := range words {
		if strings.Contains(text, word) {
			return true
		}
	}
	return false
}

func sortedNames(m map[string]hazard) (all []string) {
	for n := range m {
		all = append(all, n)
	}
	sort.Strings(all)
	return
}

// hazards tells what the steps work with. Cutting out takes a blade, and sewing
// takes needles and pins.
func (w *writer) hazards() map[string]bool {
	h := map[string]bool{"blade": len(w.Pieces) > 0}
	w.wearerHazards(h)
	for _, op := range w.Ops() {
		if !w.there(op.Cond) {
			continue
		}
		h["iron"] = h["iron"] || op.Row.Heat
		h["blade"] = h["blade"] || op.Row.Blade
		h["needle"], h["pins"] = true, true
	}
	return h
}
