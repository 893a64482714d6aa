package check

import (
	"regexp"
	"strings"
	"sync"

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
	find  func() *regexp.Regexp
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
			n.find = sync.OnceValue(func() *regexp.Regexp {
				if n.alone {
					return asNoun(n.name)
				}
				return wholeWord(n.name)
			})
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

var notLetters = expression(`[^a-z]+`)

// wordsOf gives the words of a name, each in the singular.
func wordsOf(name string) (all []string) {
	for _, w := range notLetters().Split(strings.ToLower(name), -1) {
		if w != "" {
			all = append(all, singular(w))
		}
	}
	return
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

// asNoun finds a word where it is a noun that speaks of something that is there.
// What follows may make a tool or a stitch of it: an eyelet plier, a zip foot.
func asNoun(word string) *regexp.Regexp {
	w := regexp.QuoteMeta(word)
	many := `|\b(?:` + w + `s)\b`
	if actsAsVerb[word] {
		many = ""
	}
	return regexp.MustCompile(`\b(?:the|each|every|both|this|that|these|its|their|your|an?|one|two|three|left|right|upper|lower|whole|free|finished) (?:` + w + `s?)\b` + many)
}

// ofATool are words after which a name is that of a tool.
var ofATool = expression(`^ (foot|feet|pliers?|tools?|needles?|thread|stitch|stitches|marks?er|maker|punch|turner)\b`)
