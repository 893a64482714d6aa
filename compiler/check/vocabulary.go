package check

import (
	"slices"
	"strings"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// spokenName is a word or a name by which a text speaks of something that is only
// there in some garments. A word alone has to stand as a noun, so that "tab" is
// no verb: with an article, or as a plural.
type spokenName struct {
	name  string
	cond  condition.Cond
	decl  finding.Span
	alone bool
}

// find gives the first place from one on of a text where it speaks of it, -1 if it
// does not.
func (n *spokenName) find(text string, from int) (start, end int) {
	if n.alone {
		return asNoun(text, n.name, from)
	}
	return wholeWord(text, n.name, from)
}

// vocabulary gathers the names of what is not in every garment, and the single
// words that only such names hold.
type vocabulary struct {
	r     *run
	names []spokenName
	conds map[string]condition.Cond // of each name
	words map[string]condition.Cond // where something is there that has the word in its name
	heads []spokenName
	seen  map[string]bool

	begins [1024][]int // the names that begin with two letters; see twoAt
	heard  []int
}

func (r *run) vocabulary() *vocabulary {
	v := &vocabulary{r: r, conds: map[string]condition.Cond{}, words: map[string]condition.Cond{}, seen: map[string]bool{}}
	for _, p := range r.Pieces {
		v.called(&p.Decl, p.Cond)
		v.marks(p)
		for _, e := range p.Edges {
			v.learn(e.Name, r.Space.And(e.Cond, p.Cond))
		}
	}
	for _, n := range r.Notions {
		v.called(&n.Decl, n.Cond)
	}
	for _, p := range r.Parts {
		v.called(&p.Decl, p.Cond)
		for _, e := range p.Edges {
			v.learn(e.Name, p.Cond)
		}
	}
	for _, s := range r.Strips {
		v.called(&s.Decl, s.Cond)
		for _, b := range s.Bits {
			v.called(&b.Decl, r.Space.And(b.Cond, s.Cond))
		}
	}
	v.choices()
	for _, s := range r.Seams {
		v.learn(s.ID+" "+s.Name, s.Cond)
	}
	for _, g := range r.Gaps {
		v.learn(g.ID+" "+g.Name, g.Cond)
		v.head(g.Name, g.Span)
	}
	for _, m := range r.Materials {
		v.learn(m.Name, m.Cond)
	}
	for _, s := range r.Shapings {
		v.learn(s.ID+" "+s.Name, s.Cond)
	}
	for _, s := range r.Sections {
		if !strings.Contains(s.Title.Text, " ") && s.Cond != condition.True {
			v.head(s.Title.Text, s.Title.Span)
		}
	}
	v.settle()
	return v
}

// choices takes up what options, ways and views are called.
func (v *vocabulary) choices() {
	is := v.r.Space.Is
	for _, o := range v.r.Options {
		c := v.r.Space.And(o.Cond, is(o.Var, 1))
		if strings.Contains(o.Name, " ") { // one word may be a verb as well
			v.name(o.Name, c, o.Span)
		}
		v.learn(o.ID+" "+o.Name, c)
		v.head(o.Name, o.Span)
	}
	for _, c := range v.r.Choices {
		for i, way := range c.Values {
			v.learn(way.ID+" "+way.Name, is(c.Var, i))
		}
	}
	for _, x := range v.r.Views {
		if c, ok := v.r.viewIs(x.ID); ok && strings.Count(x.Name, " ") == 1 {
			v.name(x.Name, c, x.Span)
		}
	}
}

// called takes up a thing by its name, and by the last word of it.
func (v *vocabulary) called(d *model.Decl, c condition.Cond) {
	name := shortName(d.Name)
	v.name(name, c, d.Span)
	v.learn(d.ID+" "+name, c)
	v.head(name, d.Span)
}

// marks takes up the places of a piece: "the loop place". Other marks are called
// as places of the body are, such as the centre back.
func (v *vocabulary) marks(p *model.Piece) {
	for _, m := range p.Marks {
		name := strings.ReplaceAll(lower(m.Name), "-", " ")
		c := v.r.Space.And(m.Cond, p.Cond)
		v.learn(name, c)
		if strings.HasSuffix(name, " place") || strings.HasSuffix(name, " position") {
			v.name(name, c, m.Span)
		}
	}
}

func (v *vocabulary) name(name string, c condition.Cond, decl finding.Span) {
	name = lower(name)
	if len(name) < 4 || bodyWords[name] {
		return
	}
	if _, ok := v.conds[name]; !ok {
		v.names = append(v.names, spokenName{name: name, decl: decl})
	}
	v.conds[name] = v.r.Space.Or(v.conds[name], c)
}

// learn notes where a thing is there that has certain words in its name.
func (v *vocabulary) learn(name string, c condition.Cond) {
	for _, w := range wordsOf(name) {
		v.words[w] = v.r.Space.Or(v.words[w], c)
	}
}

// head takes up the word that says what a thing is: the tab of "Sleeve tab", the
// eyelet of "Eyelet with washer".
func (v *vocabulary) head(name string, decl finding.Span) {
	name = strings.ToLower(shortName(name))
	for _, after := range []string{" with ", " for ", " of ", " in ", " to ", " from ", " ("} {
		if i := strings.Index(name, after); i > 0 {
			name = name[:i]
		}
	}
	list := wordsOf(name)
	if len(list) == 0 {
		return
	}
	w := list[len(list)-1]
	if len(w) < 3 || v.seen[w] || (bodyWords[w] || generalWords[w]) && !strings.HasSuffix(name, w+"s") {
		return
	}
	v.seen[w] = true
	v.heads = append(v.heads, spokenName{name: w, decl: decl, alone: true})
}

// settle keeps what is missing somewhere.
func (v *vocabulary) settle() {
	keep := func(n spokenName, c condition.Cond) {
		if n.cond = c; v.r.possible(v.r.Space.Not(c)) {
			two := twoAt(n.name, 0)
			v.begins[two] = append(v.begins[two], len(v.names))
			v.names = append(v.names, n)
		}
	}
	names := v.names
	v.names = nil
	for _, n := range names {
		keep(n, v.conds[n.name])
	}
	for _, n := range v.heads {
		keep(n, v.words[n.name])
	}
}

// maybeIn lists the names whose letters a text holds, in their order. A name begins
// wherever no letter stands before it; the text is gone through once for all.
func (v *vocabulary) maybeIn(text string) []int {
	v.heard = v.heard[:0]
	for i := range len(text) {
		if i > 0 && wordByte(text[i-1]) && wordByte(text[i]) {
			continue
		}
		for _, n := range v.begins[twoAt(text, i)] {
			if strings.HasPrefix(text[i:], v.names[n].name) && !slices.Contains(v.heard, n) {
				v.heard = append(v.heard, n)
			}
		}
	}
	slices.Sort(v.heard)
	return v.heard
}

// wordsOf gives the words of a name, each in the singular.
func wordsOf(name string) (all []string) {
	for w := range lettersOf(strings.ToLower(name)) {
		all = append(all, singular(w))
	}
	return
}

// lettersOf goes through the stretches of small letters in a text.
func lettersOf(text string) func(yield func(string) bool) {
	return func(yield func(string) bool) {
		start := 0
		for i := range len(text) + 1 {
			if i < len(text) && letter(text[i]) {
				continue
			}
			if i > start && !yield(text[start:i]) {
				return
			}
			start = i + 1
		}
	}
}

func singular(w string) string {
	if strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && len(w) > 3 {
		return w[:len(w)-1]
	}
	return w
}

// generalWords are parts of every garment, or of every piece.
var generalWords = map[string]bool{"end": true, "seam": true, "piece": true, "part": true, "layer": true, "row": true, "top": true, "base": true, "bottom": true,
	"hem": true, "fold": true, "line": true, "place": true, "centre": true, "center": true, "panel": true, "facing": true, "strip": true, "tape": true, "thread": true,
	"gap": true, "opening": true, "interfacing": true, "fabric": true, "cloth": true, "machine": true, "half": true, "corner": true, "length": true, "width": true}

// actsAsVerb are nouns whose plural is also what somebody or something does.
var actsAsVerb = map[string]bool{"zip": true, "snap": true, "tuck": true, "hook": true, "tie": true, "button": true, "pleat": true, "dart": true, "patch": true, "bar": true,
	"lace": true, "knot": true, "cover": true, "frill": true, "trim": true, "gather": true, "insert": true, "guard": true, "lock": true, "vent": true, "slit": true}

// ofATool reports whether what follows a name makes it that of a tool or a stitch:
// an eyelet plier, a zip foot.
func ofATool(after string) bool {
	return len(after) > 1 && after[0] == ' ' && tools.begin(after[1:]) > 0
}

var tools = phrases{"foot", "feet", "plier", "pliers", "tool", "tools", "needle", "needles", "thread", "stitch", "stitches", "marker", "maker", "punch", "turner"}
