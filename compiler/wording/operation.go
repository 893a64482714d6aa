package wording

import (
	"fmt"
	"slices"
	"strings"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/model"
)

// operation words one operation as a sentence. plural asks for both sides of the
// body in one sentence.
func (w *writer) operation(op *model.Op, plural bool) []booklet.Inline {
	if op.Instead != nil {
		return sentence(w.line(op.Instead))
	}
	if op.Only != model.Neither {
		plural = false
	}
	if op.Row.Sews && len(op.Objects) > 1 {
		return w.several(op, plural)
	}
	var rest []booklet.Inline
	for _, p := range distanceLast(op.Phrases) {
		rest = add(rest, w.phrase(op, p, plural)...)
	}
	if op.Only != model.Neither {
		rest = add(rest, booklet.Text(" "+w.ph.Phrases["only-"+op.Only.String()]))
	}
	var out []booklet.Inline
	if op.Row.Sews && len(op.Objects) == 1 {
		out = add(add(w.sewing(op.Objects[0], plural), rest...), w.caught(op.Objects[0], plural)...)
	} else if phrase := w.operationPhrase(op); strings.Contains(phrase, "{p}") {
		with := w.objects(op, plural)
		with["p"] = rest
		out = fill(phrase, with)
	} else {
		out = add(fill(phrase, w.objects(op, plural)), rest...)
	}
	out = sentence(out)
	if op.Row.Sews {
		out = add(out, w.allowance(op.Objects)...)
	}
	return add(out, w.drawnUp(op)...)
}

// several words the sewing of several seams or darts: a sentence for each, since
// each joins other parts. Darts are told together.
func (w *writer) several(op *model.Op, plural bool) (out []booklet.Inline) {
	if op.Objects[0].Seam == nil {
		return sentence(fill(w.ph.Operations["sew-shaping"], filling{"o": w.things(op.Objects, plural)}))
	}
	for _, t := range op.Objects {
		if !w.there(t.Cond) {
			continue
		}
		one := *op
		one.Objects = []*model.Target{t}
		if len(out) > 0 {
			out = add(out, booklet.Text(" "))
		}
		out = add(out, w.operation(&one, plural)...)
	}
	return
}

// distanceLast puts the distance of a row of stitching at the end: "on the back,
// 1/4 in from the seam". Several distances are several rows, and are told together.
func distanceLast(list []*model.Phrase) (all []*model.Phrase) {
	var last []*model.Phrase
	for _, p := range list {
		if p.Name == "distance" {
			last = append(last, p)
		} else {
			all = append(all, p)
		}
	}
	if len(last) > 1 { // two rows, as for gathering
		both := *last[0]
		both.Amounts = slices.Clone(both.Amounts)
		for _, p := range last[1:] {
			both.Amounts = append(both.Amounts, p.Amounts...)
		}
		last = []*model.Phrase{&both}
	}
	return append(all, last...)
}

// operationPhrase finds the phrase of a verb, or makes the plain one.
func (w *writer) operationPhrase(op *model.Op) string {
	ops := w.ph.Operations
	key := op.Verb
	if len(op.Objects) > 0 {
		switch kind := op.Objects[0].Kind; {
		case op.Verb == "turn" && (op.Phrase("to") != nil || op.Phrase("toward") != nil || op.Phrase("out") != nil):
			key = "turn-to"
		case op.Verb == "fuse" && op.Phrase("to") != nil:
			key = "fuse-to"
		case op.Verb == "finish" && kind == model.ToSeam:
			key = "finish-seam"
		case op.Verb == "join" && op.Phrase("to") == nil:
			key = "join-ends"
		case op.Verb == "sew on" && op.Phrase("to") != nil:
			key = "sew-on-to"
		case op.Verb == "sew":
			key = "sew-again"
		case op.Verb == "hem" && w.allNamed(op.Objects, "hem"):
			key = "hem-hem"
		}
	}
	if op.Verb == "buttonhole" && op.Count > 1 {
		key = "buttonhole-many"
	}
	if s := ops[key]; s != "" {
		return s
	}
	return upper(op.Verb) + " {o}"
}

func (w *writer) objects(op *model.Op, plural bool) filling {
	o := w.things(op.Objects, plural)
	if len(op.Objects) == 1 && op.Objects[0].From != nil {
		t := op.Objects[0]
		o = add(o, booklet.Text(" "))
		o = add(o, fill(w.ph.Phrases["from-to"], filling{"t": plain(w.end(t.From)), "t2": plain(w.end(t.To))})...)
	}
	if op.Counted && len(op.Objects) == 1 {
		o = plain(w.counted(op.Objects[0], op.Count))
	}
	if t := op.Objects; op.Verb == "test" && len(t) == 1 && t[0].Kind == model.ToNotion && t[0].NotionBit == "" && t[0].Notion.Listed != 1 {
		o = plain(put(w.ph.Things["each"], "name", lower(short(t[0].Notion.Name))))
	}
	if op.Verb == "mark" {
		o = w.marks(op.Objects, plural)
	}
	return filling{"o": o, "n": plain(fmt.Sprint(op.Count)), "in": plain(w.ph.Things["interfacing"]), "pieces": w.pieces(op.Objects, plural)}
}

// allNamed reports whether all of a list are edges of this name.
func (w *writer) allNamed(list []*model.Target, name string) bool {
	for _, t := range list {
		if t.Kind != model.ToEdge || t.Edge.ID != name {
			return false
		}
	}
	return len(list) > 0
}

// counted words so many of a thing: "1 button", "5 loops".
func (w *writer) counted(t *model.Target, n int) string {
	name := strings.TrimPrefix(w.thing(t, false), "the ")
	if t.Notion != nil && t.NotionBit != "" && n > 1 {
		out := put(w.ph.Things["halves"], "n", fmt.Sprint(n))
		out = put(out, "halves", w.plural(strings.ReplaceAll(t.NotionBit, "-", " ")))
		return put(out, "name", lower(short(t.Notion.Name)))
	}
	if n == 1 {
		return "1 " + name
	}
	return fmt.Sprintf("%d %s", n, w.plural(name))
}

// sewing words the sewing of one seam or dart.
func (w *writer) sewing(t *model.Target, plural bool) []booklet.Inline {
	ops := w.ph.Operations
	if t.Kind != model.ToSeam {
		return fill(ops["sew-shaping"], filling{"o": w.things([]*model.Target{t}, plural)})
	}
	s := t.Seam
	with := filling{"o": plain(w.thing(t, plural)), "a": w.pieces(rowOf(t, s.Joins), plural), "b": w.pieces(rowOf(t, s.To), plural)}
	key := "sew"
	if len(s.Joins) == 1 && len(s.To) == 1 && s.Joins[0].Path == s.To[0].Path {
		key = "sew-tube"
		if paired(s.Joins[0]) {
			key = "sew-pair"
			with["a"] = plain(w.plural(strings.TrimPrefix(w.piece(s.Joins[0], false), "the ")))
		}
	} else if booklet.Plain(with["a"]) == booklet.Plain(with["b"]) {
		key = "sew-self"
	}
	out := fill(ops[key], with)
	if t.From != nil {
		out = add(out, booklet.Text(" "))
		out = add(out, fill(w.ph.Phrases["from-to"], filling{"t": plain(w.end(t.From)), "t2": plain(w.end(t.To))})...)
	}
	return out
}

// caught words what lies between the layers of a seam, at the end of its sentence.
func (w *writer) caught(t *model.Target, plural bool) []booklet.Inline {
	if t.Seam == nil {
		return nil
	}
	var counted [][]booklet.Inline
	var others []*model.Target
	for _, c := range t.Seam.Catching {
		if c.Said && c.Count > 1 && (c.Target.Kind == model.ToBit || c.Target.Kind == model.ToNotion) && w.there(c.Target.Cond) {
			counted = append(counted, plain(w.counted(c.Target, c.Count)))
			continue
		}
		others = append(others, c.Target)
	}
	what := w.things(others, plural)
	if len(counted) > 0 {
		switch first := list(counted, w.ph.Things["and"]); {
		case len(what) == 0:
			what = first
		case len(others) > 1:
			what = add(add(first, booklet.Text(", ")), what...)
		default:
			what = list(append(counted, what), w.ph.Things["and"])
		}
	}
	if len(what) == 0 {
		return nil
	}
	return add(plain(", "), fill(w.ph.Phrases["catching"], filling{"t": what})...)
}

// rowOf narrows a row of a seam to the side and the cloth that a target means.
func rowOf(t *model.Target, row []*model.Target) (all []*model.Target) {
	if t.In == "" {
		return onSide(row, t.Side)
	}
	for _, x := range onSide(row, t.Side) {
		c := *x
		c.Instances = nil
		for _, i := range x.Instances {
			if i.Cut.Material.ID == t.In || i.Copy == t.In {
				c.Instances = append(c.Instances, i)
			}
		}
		all = append(all, &c)
	}
	return
}

// onSide narrows the pairs of a row to one side of the body.
func onSide(row []*model.Target, side model.Side) (all []*model.Target) {
	if side == model.Neither {
		return row
	}
	for _, t := range row {
		x := *t
		if paired(t) {
			x.Side, x.Instances = side, nil
			for _, i := range t.Instances {
				if i.Side == side {
					x.Instances = append(x.Instances, i)
				}
			}
		}
		all = append(all, &x)
	}
	return
}

// end words the end of a stretch.
func (w *writer) end(t *model.Target) string {
	if t.Kind == model.ToEdge {
		return put(w.ph.Things["line"], "name", t.Edge.Name)
	}
	return w.thing(t, false)
}

// pieces words the pieces of a row of a seam.
func (w *writer) pieces(row []*model.Target, plural bool) []booklet.Inline {
	var out [][]booklet.Inline
	for _, t := range row {
		t.Each(func(x *model.Target) {
			if !w.there(x.Cond) {
				return
			}
			switch {
			case x.Piece != nil:
				out = append(out, plain(w.piece(x, plural)))
			case x.Part != nil:
				out = append(out, plain("the "+lower(x.Part.Name)))
			}
		})
	}
	return list(once(out), w.ph.Things["and"])
}

// allowance says the allowance of a seam where it is not the common one.
func (w *writer) allowance(sewn []*model.Target) []booklet.Inline {
	for _, t := range sewn {
		s := t.Seam
		if s == nil || !s.Own {
			continue
		}
		if s.None {
			return plain(" " + w.ph.Phrases["no-allowance"])
		}
		if s.Allow != nil && (w.Pattern.Allow == nil || s.Allow.Length != w.Pattern.Allow.Length) {
			return add(plain(" "), fill(w.ph.Phrases["allowance"], filling{"m": w.amount(s.Allow)})...)
		}
	}
	return nil
}

// phrase words one phrase of an operation, with the space before it.
func (w *writer) phrase(op *model.Op, p *model.Phrase, plural bool) []booklet.Inline {
	key, with := w.phraseKey(op, p), filling{}
	if len(p.Amounts) > 0 {
		with["m"] = w.amount(&p.Amounts[0])
	}
	if len(p.Amounts) > 1 {
		with["m2"] = w.amount(&p.Amounts[1])
	}
	with["t"] = w.these(p.Targets)
	if !plural {
		with["t"] = w.things(p.Targets, false)
	}
	with["w"] = plain(p.Word)
	switch {
	case p.Name == "distance" && len(p.Amounts) > 1:
		var rows [][]booklet.Inline
		for i := range p.Amounts {
			rows = append(rows, w.amount(&p.Amounts[i]))
		}
		with["m"] = list(rows, w.ph.Things["and"])
	case p.Name == "for" && op.Count > 1 && len(p.Targets) == 1 && p.Targets[0].Kind == model.ToNotion:
		with["t"] = plain(w.plural(w.thing(p.Targets[0], false)))
	case p.Name == "with" && p.Word != "":
		with["w"] = plain(w.word(w.ph.Techniques, p.Word))
	case p.Word != "" && (p.Name == "toward" || p.Name == "to"):
		with["t"] = plain(w.word(w.ph.Directions, p.Word))
	case p.Gap != "":
		with["t"] = plain("the " + strings.ReplaceAll(p.Gap, "-", " "))
	}
	if strings.Contains(key, "{t}") && len(with["t"]) == 0 {
		return nil
	}
	sep := " "
	if p.Name == "keeping" || p.Name == "catching" || p.Name == "leaving" && op.Phrase("turning") != nil || p.Name == "distance" && len(p.Amounts) < 2 || p.Name == "turning" {
		sep = ", "
	}
	return add(plain(sep), fill(key, with)...)
}

func (w *writer) word(table map[string]string, word string) string {
	if s := table[word]; s != "" {
		return s
	}
	return "the " + strings.ReplaceAll(word, "-", " ")
}

// phraseKey picks the phrase by what it holds.
func (w *writer) phraseKey(op *model.Op, p *model.Phrase) string {
	ph := w.ph.Phrases
	switch p.Name {
	case "turning":
		if len(p.Amounts) > 1 {
			return ph["turning-2"]
		}
	case "to":
		switch {
		case len(p.Amounts) > 0:
			return ph["to-amount"]
		case ph[op.Verb+"-to"] != "":
			return ph[op.Verb+"-to"]
		}
	case "flat":
		if op.Row.Sews {
			return ph["sewn-flat"]
		}
	case "together":
		return ph[p.Word]
	case "with":
		if p.Word != "" {
			return ph["with-word"]
		}
	case "leaving":
		if p.Gap != "" {
			return ph["leaving-gap"]
		}
	case "through":
		if p.Word != "" {
			return ph["through-all"]
		}
	case "distance":
		if len(p.Amounts) > 1 {
			return ph["distance-rows"]
		}
		if len(op.Objects) > 0 && op.Objects[0].Kind == model.ToSeam {
			return ph["distance-seam"]
		}
		return ph["distance-edge"]
	case "hand":
		return ph[p.Word]
	case "at":
		if p.Place != "" {
			return ph[p.Place]
		}
	}
	return ph[p.Name]
}

// both reports whether an operation is done once on each side of the body.
func both(op *model.Op) bool {
	if op.Only != model.Neither || len(op.Objects) == 0 {
		return false
	}
	for _, t := range op.Objects {
		if !twofold(t) {
			return false
		}
	}
	return true
}
