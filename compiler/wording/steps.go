package wording

import (
	"fmt"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// steps makes the chapter of the steps.
func (w *writer) steps() *booklet.Chapter {
	ch := w.chapter("steps")
	for _, sec := range w.Sections {
		var steps []booklet.Block
		for _, s := range sec.Steps {
			if w.there(s.Cond) {
				steps = append(steps, w.step(s))
			}
		}
		if len(steps) == 0 {
			continue
		}
		if sec.Title.Text != "" {
			ch.Blocks = append(ch.Blocks, w.heading(sec.Title.Text))
		}
		for _, c := range sec.Cautions {
			if w.there(c.Cond) {
				ch.Blocks = append(ch.Blocks, w.guarded(w.when(c.Cond), []booklet.Block{w.caution(c)})...)
			}
		}
		for _, n := range sec.Notes {
			if w.there(n.Cond) {
				ch.Blocks = append(ch.Blocks, w.guarded(w.when(n.Cond), w.prose(n))...)
			}
		}
		for _, f := range sec.Figures {
			if x := w.figure(f); x != nil && w.there(f.Cond) {
				ch.Blocks = append(ch.Blocks, x)
			}
		}
		ch.Blocks = append(ch.Blocks, steps...)
	}
	if len(ch.Blocks) == 0 {
		return nil
	}
	return ch
}

// step words one step: what is done in the author's order, figures apart.
func (w *writer) step(s *model.Step) *booklet.Step {
	out := &booklet.Step{ID: w.stepIDs[s], Number: w.numbers[s], Title: s.Title.Text, When: w.when(s.Cond)}
	repeat := w.repeats(s)
	last := 0
	for _, i := range s.Items {
		if !w.there(i.Where()) {
			continue
		}
		at := w.within(i.Where(), s.Cond)
		switch x := i.(type) {
		case *model.Op:
			out.Blocks = w.join(out.Blocks, at, para(w.operation(x, !repeat)))
			last = len(out.Blocks)
		case *model.Prose:
			out.Blocks = w.join(out.Blocks, at, w.prose(x)...)
		case *model.Caution:
			out.Blocks = w.join(out.Blocks, at, w.caution(x))
		case *model.TryOn:
			if x.Body != nil {
				out.Blocks = w.join(out.Blocks, at, w.prose(x.Body)...)
			}
		case *model.Figure:
			if f := w.figure(x); f != nil {
				f.Caption = add(f.Caption, w.note(at)...)
				out.Figures = append(out.Figures, f)
			}
		}
	}
	if repeat {
		again := booklet.Block(para(plain(w.ph.Phrases["repeat"])))
		out.Blocks = append(out.Blocks[:last], append([]booklet.Block{again}, out.Blocks[last:]...)...)
	}
	return out
}

// repeats reports whether every operation of a step is done on each side, so
// that it can be told for one side and repeated.
func (w *writer) repeats(s *model.Step) bool {
	n := 0
	for _, i := range s.Items {
		op, ok := i.(*model.Op)
		if !ok || !w.there(op.Cond) {
			continue
		}
		if op.As != nil || !both(op) {
			return false
		}
		n++
	}
	return n > 1
}

// within words a condition inside another: nothing if it says no more.
func (w *writer) within(inner, outer condition.Cond) string {
	in, out := w.Space.Given(inner, w.chosen), w.Space.And(w.valid, w.Space.Given(outer, w.chosen))
	if w.Space.Implies(out, in) {
		return ""
	}
	return upper(w.Space.Words(w.Space.Smallest(w.Space.And(in, out), out), w.names))
}

func (w *writer) note(at string) []booklet.Inline {
	if at == "" {
		return nil
	}
	return plain(" (" + lower(at) + ")")
}

func (w *writer) guarded(at string, blocks []booklet.Block) []booklet.Block {
	if at == "" || len(blocks) == 0 {
		return blocks
	}
	return []booklet.Block{&booklet.Group{When: at, Blocks: blocks}}
}

// join adds blocks of a step; those of the same garments as the ones before them
// come under the same line.
func (w *writer) join(to []booklet.Block, at string, more ...booklet.Block) []booklet.Block {
	if len(to) > 0 && at != "" {
		if g, ok := to[len(to)-1].(*booklet.Group); ok && g.When == at {
			g.Blocks = append(g.Blocks, more...)
			return to
		}
	}
	return append(to, w.guarded(at, more)...)
}

func (w *writer) caution(c *model.Caution) *booklet.Caution {
	signal := c.Signal
	if signal == "" {
		signal = "caution"
	}
	return &booklet.Caution{Signal: w.ph.Signals[signal], Text: w.line(c.Body)}
}

// terms makes the glossary of the words that the booklet uses.
func (w *writer) terms() *booklet.Chapter {
	var items []booklet.Term
	used := w.usedWords()
	for _, t := range w.Terms {
		if used(t.Word.Text) {
			items = append(items, booklet.Term{ID: w.id("word", t.Word.Text), Word: t.Word.Text, Blocks: w.prose(t.Body)})
		}
	}
	if len(items) == 0 {
		return nil
	}
	ch := w.chapter("words")
	ch.Blocks = []booklet.Block{&booklet.Terms{Items: items}}
	return ch
}

func (w *writer) changes() *booklet.Chapter {
	var items []booklet.Term
	for _, c := range w.Changes {
		if c.Body != nil {
			items = append(items, booklet.Term{ID: w.id("edition", c.Edition.Text), Word: fmt.Sprintf("%s %s", w.ph.Labels["edition"], c.Edition.Text), Blocks: w.prose(c.Body)})
		}
	}
	if len(items) == 0 {
		return nil
	}
	ch := w.chapter("changed")
	ch.Blocks = []booklet.Block{&booklet.Terms{Items: items}}
	return ch
}
