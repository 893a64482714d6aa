package compiler

import (
	"errors"
	"fmt"
	"math/big"
	"slices"
	"strings"

	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/size"
	"seamwarden/compiler/wording"
	"seamwarden/dsl/finding"
)

// ChooseSize chooses a size for somebody from what she measured, by the keys of the
// table's body rows. The error says in plain words what the table does not know, what is
// missing, or which measure cannot be right.
func ChooseSize(p *model.Pattern, own map[string]measure.Measure) (*size.Chosen, *wording.SizeTold, error) {
	if p.Sizes == nil {
		return nil, nil, errors.New("this pattern has no sizes")
	}
	body := size.Body{}
	for _, key := range sortedKeys(own) {
		if err := believable(p.Sizes, key, own[key]); err != nil {
			return nil, nil, err
		}
		body[key] = own[key].Length
	}
	chosen, err := p.Sizes.Choice(body)
	switch {
	case errors.Is(err, size.ErrNoBody):
		return nil, nil, errors.New("the table of sizes has no body measures to choose a size by")
	case errors.Is(err, size.ErrNoLead):
		lead := p.Sizes.Lead()
		return nil, nil, fmt.Errorf("the size is chosen by the %s: add --%s; the table has %s", strings.ToLower(p.Sizes.Versions()[0].BodyRow(lead).Name), lead, flagsOf(p.Sizes))
	}
	told, err := wording.Size(p, own, chosen)
	return chosen, told, err
}

// bodyKeys lists the body rows by which somebody can be measured.
func bodyKeys(c *size.Chart) (keys []string) {
	for _, d := range c.Versions() {
		for _, row := range d.Body {
			if !slices.Contains(keys, row.Key) {
				keys = append(keys, row.Key)
			}
		}
	}
	return
}

func flagsOf(c *size.Chart) string {
	var flags []string
	for _, key := range bodyKeys(c) {
		flags = append(flags, "--"+key)
	}
	return strings.Join(flags, ", ")
}

// believable refuses a measure that the table does not know, and one that is less than
// half of its smallest or more than twice its largest: no body that the pattern is for
// has it, and it is mostly the wrong unit.
func believable(c *size.Chart, key string, m measure.Measure) error {
	keys := bodyKeys(c)
	switch near := finding.Nearest(key, keys); {
	case slices.Contains(keys, key):
	case len(keys) == 0:
		return errors.New("the table of sizes has no body measures to choose a size by")
	case near != "":
		return fmt.Errorf("the table of sizes has no body measure %q; did you mean --%s?", key, near)
	default:
		return fmt.Errorf("the table of sizes has no body measure %q; it has %s", key, flagsOf(c))
	}
	low, high := rangeOf(c, key)
	if m.Length.Sign() > 0 && m.Length.Mul(2).Cmp(low) >= 0 && m.Length.Cmp(high.Mul(2)) <= 0 {
		return nil
	}
	sentence := fmt.Sprintf("--%s %s cannot be right: the sizes go from %s to %s", key, m, measure.Source(low, c.Unit), measure.Source(high, c.Unit))
	for _, u := range []measure.Unit{measure.Inch, measure.Centimetre, measure.Millimetre} {
		l := measure.FromRat(m.Length.In(m.Unit), u)
		if m.Unit != u && l.MulRat(big.NewRat(4, 3)).Cmp(low) >= 0 && l.MulRat(big.NewRat(3, 4)).Cmp(high) <= 0 {
			return fmt.Errorf("%s; did you mean %s?", sentence, measure.Source(l, u))
		}
	}
	return errors.New(sentence)
}

// rangeOf gives the smallest and the largest measure of a body row, over all drafts.
func rangeOf(c *size.Chart, key string) (low, high measure.Length) {
	for _, d := range c.Versions() {
		row := d.BodyRow(key)
		for i := range d.Sizes {
			if !row.Has(i) {
				continue
			}
			if v := row.Values[i]; high.IsZero() {
				low, high = v, v
			} else if v.Cmp(low) < 0 {
				low = v
			} else if v.Cmp(high) > 0 {
				high = v
			}
		}
	}
	return
}
