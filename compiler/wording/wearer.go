package wording

import (
	"fmt"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/model"
)

// wearerFacts tells on the cover for whom the garment is, and what the law of a
// country may want on the outside of a printed pattern.
func (w *writer) wearerFacts() (all []booklet.Fact) {
	if f := w.For; f != nil {
		text := plain(w.ph.Wearer[f.Who])
		if f.Low != nil {
			text = add(text, fill(w.ph.Wearer[rangeKey("height", f.Low.Length.Cmp(f.High.Length) == 0)], filling{"low": w.amount(f.Low), "high": w.amount(f.High)})...)
		}
		if f.FromMonths >= 0 {
			key := rangeKey(f.In, f.From == f.To)
			text = add(text, fill(w.ph.Wearer[key], filling{"from": plain(fmt.Sprint(f.From)), "to": plain(fmt.Sprint(f.To))})...)
		}
		all = append(all, booklet.Fact{Name: w.ph.Labels["for"], Value: text})
	}
	if w.Packaging != nil {
		all = append(all, booklet.Fact{Name: w.ph.Labels["packaging"], Value: w.line(w.Packaging)})
	}
	return
}

func rangeKey(what string, one bool) string {
	if one {
		return what + "-one"
	}
	return what
}

// wearerHazards notes what children's things bring: cords where clothes are made,
// small parts for those under three, fire with nightwear, loose filling, and the
// rules of the reader's country.
func (w *writer) wearerHazards(h map[string]bool) {
	if !w.ForChildren() {
		return
	}
	h["rules"] = true
	h["cords"] = w.there(w.Space.Not(w.KindIs(model.NoClothes...)))
	h["fire"] = w.there(w.KindIs("sleepwear"))
	for _, n := range w.Notions {
		if n.Fill && w.there(n.Cond) {
			h["fill"] = true
		} else if n.Kind == model.Counted && w.there(w.Space.And(n.Cond, w.UnderThree())) {
			h["small-parts"] = true
		}
	}
}
