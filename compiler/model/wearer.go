package model

import (
	"fmt"
	"slices"

	"seamwarden/compiler/condition"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/size"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// Wearer is for whom the garment is. Ages are in whole months, both ends meant;
// ToMonths is the last month of the last age, so that "to 8 years" is 107.
type Wearer struct {
	Who                  string  // children, girls, boys or adults
	Low, High            *Amount // body height; nil if it is not said
	FromMonths, ToMonths int     // -1 if no age is said
	From, To             int     // the ages as they are written
	In                   string  // years or months
	Span                 finding.Span
}

// GarmentKind is what is made, for some of the garments.
type GarmentKind struct {
	Word string // of [KindWords]
	Cond condition.Cond
	Span finding.Span
}

// KindWords are the kinds that the rules of safety tell apart.
var KindWords = []string{"outerwear", "top", "bottoms", "dress", "sleepwear", "underwear", "costume", "apron", "bib", "hat", "scarf", "bag", "toy", "quilt", "other"}

// NoClothes are the kinds that are not worn, or that the rules on cords in
// children's clothes leave out: EN 14682 excludes bibs, hats, scarves and bags
// (read in the published scope of the standard, not in the standard itself).
var NoClothes = []string{"bib", "hat", "scarf", "bag", "toy", "quilt", "other"}

// Hazards are what a caution can say that it is about.
var Hazards = []string{"iron", "blade", "needle", "pins", "cords", "small-parts", "fire", "fill"}

// Wearing says where something that could catch is worn, and what it does there.
// Exactly one of Draws, Ties, Trims and Binds is set.
type Wearing struct {
	What                      *Decl
	Thing                     any    // *Notion, *Strip or *Piece
	Word                      string // the word that declares it: cord, tape, strip, piece …
	Place                     string
	Draws, Ties, Trims, Binds bool
	Ends                      string  // free, fixed, toggle or knot; "" if it is not said
	Loop                      bool    // one cord without ends
	Retracts                  bool    // it goes back into its channel by itself
	Outside                   *Amount // how far it hangs out at the garment's full width
	Cond                      condition.Cond
	Span                      finding.Span
}

// ForChildren reports whether the pattern says that it is for children.
func (p *Pattern) ForChildren() bool { return p.For != nil && p.For.Who != "adults" }

// KindIs says in which garments one of these kinds is made.
func (p *Pattern) KindIs(words ...string) condition.Cond {
	c := condition.False
	for _, k := range p.Kinds {
		if slices.Contains(words, k.Word) {
			c = p.Space.Or(c, k.Cond)
		}
	}
	return c
}

// InSizes says in which sizes a test holds. A pattern without sizes is asked
// once, with the number -1.
func (p *Pattern) InSizes(test func(i int) bool) condition.Cond {
	if p.Sizes == nil || len(p.Sizes.Sizes) == 0 {
		if test(-1) {
			return condition.True
		}
		return condition.False
	}
	c := condition.False
	for i := range p.Sizes.Sizes {
		if test(i) {
			c = p.Space.Or(c, p.Space.Is(p.sizeVar, i))
		}
	}
	return c
}

// SizeLabel reads the name of the size number i; nothing for -1.
func (p *Pattern) SizeLabel(i int) size.Label {
	if i < 0 || p.Sizes == nil {
		return size.Label{}
	}
	return size.ReadLabel(p.Sizes.Sizes[i])
}

func (b *builder) wearer(n *dsl.For, at finding.Span) {
	w := &Wearer{Who: n.Who, FromMonths: -1, ToMonths: -1, Span: at}
	for _, bit := range n.Bits {
		if bit.Low != nil {
			w.Low = b.amount(bit.Low)
			if w.High = b.amount(bit.High); w.High == nil {
				w.High = w.Low
			}
			continue
		}
		w.From, w.In = b.count(bit.From), bit.In
		if w.To = w.From; bit.To != nil {
			w.To = b.count(bit.To)
		}
		unit := 12
		if bit.In == "months" {
			unit = 1
		}
		w.FromMonths, w.ToMonths = w.From*unit, (w.To+1)*unit-1
	}
	if w.High != nil && w.High.Length.Cmp(w.Low.Length) < 0 || w.To < w.From {
		b.report(wrong("sentence-not-understood", at, "backwards", "The range runs backwards.", "Write the smaller number first: `for children, ages 2 to 8 years`."))
		return
	}
	if b.For != nil {
		b.report(related(wrong("name-declared-twice", at, "said again", "It is said twice for whom the garment is.", "Keep one of the two sentences."), b.For.Span, "said here first"))
		return
	}
	b.For = w
}

func (b *builder) garmentKind(n *dsl.GarmentKind) {
	at := dsl.SpanOf(n.What.Tokens)
	if !slices.Contains(KindWords, n.What.Text) {
		b.report(notListed(at, "kind of garment", n.What.Text, KindWords))
		return
	}
	b.Kinds = append(b.Kinds, &GarmentKind{Word: n.What.Text, Cond: b.guard(n), Span: at})
}

// hazard reads what a caution is about.
func (b *builder) hazard(n *dsl.Name) string {
	if n == nil {
		return ""
	}
	if !slices.Contains(Hazards, n.Text) {
		b.report(notListed(dsl.SpanOf(n.Tokens), "hazard", n.Text, Hazards))
		return ""
	}
	return n.Text
}

func notListed(at finding.Span, what, word string, known []string) finding.Finding {
	help := "There is " + enumerate(slices.Clone(known)) + "."
	if n := finding.Nearest(word, known); n != "" {
		help = fmt.Sprintf("Did you mean `%s`? %s", n, help)
	}
	return wrong("name-unknown", at, "", fmt.Sprintf("`%s` is no %s that is known here.", word, what), help)
}

// wearing reads where a thing is worn. What a cord and an elastic do there, unless
// it is said, is to draw up; anything else ties.
func (b *builder) wearing(n *dsl.Wear, w Wearing) {
	w.Place, w.Span, w.Cond = n.Place, dsl.SpanOf(n.Tokens), b.Space.And(w.What.Cond, b.guard(n))
	said := false
	for _, bit := range n.Bits {
		w.Draws = w.Draws || bit.Draws
		w.Ties, w.Trims, w.Binds = w.Ties || bit.How == "ties", w.Trims || bit.How == "trims", w.Binds || bit.How == "binds"
		said = said || bit.Draws || bit.How != ""
		w.Loop, w.Retracts = w.Loop || bit.Loop, w.Retracts || bit.Retracts
		if bit.Ends != "" {
			w.Ends = bit.Ends
		}
		if bit.Outside != nil {
			w.Outside = b.amount(bit.Outside)
		}
	}
	if !said {
		w.Draws = w.Word == "cord" || w.Word == "elastic"
		w.Ties = !w.Draws
	}
	b.Wearings = append(b.Wearings, &w)
}

func (b *builder) wornAt(s Source, w Wearing) {
	if n, ok := s.Node.(*dsl.Wear); ok {
		b.wearing(n, w)
	}
}

// threeTall is a height that half of all children reach at about three years: the
// medians at 36.5 months are 95.3 cm for boys and 94.2 cm for girls (US CDC growth
// charts of 2000, statage, public domain; read).
const threeTall = 94

// UnderThree says in which garments the wearer may be younger than three: by sizes
// that are ages; else by the ages that are said for all; else by height. A range
// that reaches below three is below three. 16 CFR 1501.2 (read) sets the age.
func (p *Pattern) UnderThree() condition.Cond {
	if !p.ForChildren() {
		return condition.False
	}
	return p.InSizes(func(i int) bool {
		if l := p.SizeLabel(i); l.MonthsHigh > 0 {
			return l.MonthsLow < 36
		}
		if p.For.FromMonths >= 0 {
			return p.For.FromMonths < 36
		}
		h, ok := p.HeightOf(i)
		return ok && h.MM() < 10*threeTall
	})
}

// HeightOf gives the body height of a size: of the row height of the size table,
// else of the size's name, where a range gives its lower end, else the lowest
// height that the head says.
func (p *Pattern) HeightOf(i int) (measure.Length, bool) {
	if i >= 0 && p.Sizes != nil {
		if r := p.Sizes.BodyRow("height"); r != nil && r.Has(i) {
			return r.Values[i], true
		}
		if l := p.SizeLabel(i); l.CmLow > 0 {
			m, err := measure.Parse(fmt.Sprintf("%dcm", l.CmLow))
			return m.Length, err == nil
		}
	}
	if p.For != nil && p.For.Low != nil {
		return p.For.Low.Length, true
	}
	return measure.Length{}, false
}
