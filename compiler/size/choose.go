package size

import (
	"errors"
	"math/big"
	"slices"

	"seamwarden/compiler/measure"
)

// How a size is chosen, in two sentences that the booklet prints:
//
//	Take the size whose leading measure is nearest to yours, and from half way on
//	the larger one. If there are several drafts, do so in each and take the draft
//	whose measures in that size, all together, are nearest to yours.
//
// In full, for a second implementation (testdata/choose.json holds it to this one):
//
//  1. Limits. A row of n values v[0] … v[n-1] has n+1 limits b[0] … b[n]: those that
//     are declared; else by the table's way
//     nearest: b[i] = (v[i-1]+v[i])/2,  b[0] = v[0]−(v[1]−v[0])/2,  b[n] = v[n-1]+(v[n-1]−v[n-2])/2
//     larger:  b[i] = v[i-1],           b[0] = v[0]−(v[1]−v[0]),    b[n] = v[n-1]
//     smaller: b[i] = v[i],             b[0] = v[0],                b[n] = v[n-1]+(v[n-1]−v[n-2])
//     A row of one size has no limits: everybody is in it.
//  2. Size. A measure x is in the last size i with b[i] ≤ x (with b[i] < x for larger,
//     unless the limits are declared). It is below if there is none, and then the size
//     is the first; it is above if b[n] ≤ x (b[n] < x), and then the size is the last.
//     How far it is outside is counted from that size's own value.
//  3. Between. With v[a] ≤ x < v[a+1] and t = (x−v[a])/(v[a+1]−v[a]), x is between
//     the sizes a and a+1 if 1/4 ≤ t ≤ 3/4.
//  4. The size that is taken is that of the leading measure.
//  5. Ease. Of each finished row over a measure: its value in the size that is
//     taken, less x.
//     It is easy there if, for each such row, what is left differs from the row's own ease
//     by no more than a quarter of that. Without such a row it is not.
//  6. Drafts. The misses of a draft are the sum of |x − v[size that is taken]| over all measures
//     that were taken and that every draft has; the draft with the least is taken, the first of equals.
//
// Lengths are exact. In whole nanometres every multiple of 1/64 in is exact
// (396,875 nm), and so are the halves that limits need.

// Body is what somebody measures, by the keys of body rows.
type Body map[string]measure.Length

// Where says how a measure lies to the sizes of a row.
type Where string

// The places.
const (
	Inside Where = "inside"
	Below  Where = "below" // less than the smallest size is for
	Above  Where = "above" // more than the largest size is for
)

// Fit is one measure of somebody's body in one version of the chart.
type Fit struct {
	Key     string
	Own     measure.Length
	Size    int // by this measure alone
	Where   Where
	Off     measure.Length // own less the row's value in the size that is taken
	Beyond  measure.Length // how far below or above the first or last size's value
	Between bool           // in the middle half between two sizes
	Lower   int            // then the smaller of the two
	Ease    []Ease         // in the size that is taken
	Easy    bool           // it is within a quarter of what the pattern means
}

// Ease is what a finished row leaves over somebody's body. The row's own ease is what
// the pattern means to leave.
type Ease struct {
	Row         *Row
	Here, Meant measure.Length
}

// Choice is the size that is taken in one version of the chart.
type Choice struct {
	Version Draft
	Size    int
	Fits    []Fit // the leading measure first, then in the order of the rows
	Misses  measure.Length
}

// Lead is the fit of the leading measure.
func (c *Choice) Lead() *Fit { return &c.Fits[0] }

// Chosen is what the chart says to somebody.
type Chosen struct {
	Lead    string
	Choices []Choice // one for each version, in their order
	Best    int      // the number of the one to take
	Tied    bool     // another version is as good, by what was measured
	Ask     []string // then the measures that would tell the versions apart
}

// What keeps a size from being chosen.
var (
	ErrNoBody = errors.New("the table has no body measures to choose by")
	ErrNoLead = errors.New("the leading measure was not taken")
)

// Choice chooses a size for somebody. Measures that the chart does not have are
// passed over. The error is ErrNoBody or ErrNoLead.
func (c *Chart) Choice(own Body) (*Chosen, error) {
	out := &Chosen{Lead: c.Lead()}
	if out.Lead == "" {
		return nil, ErrNoBody
	}
	if _, ok := own[out.Lead]; !ok {
		return nil, ErrNoLead
	}
	for _, d := range c.Versions() {
		out.Choices = append(out.Choices, c.choiceIn(d, out.Lead, own))
	}
	for i := range out.Choices[1:] {
		switch out.Choices[i+1].Misses.Cmp(out.Choices[out.Best].Misses) {
		case -1:
			out.Best, out.Tied = i+1, false
		case 0:
			out.Tied = true
		}
	}
	if out.Tied {
		out.Ask = c.telling(own)
	}
	return out, nil
}

// choiceIn chooses in one version.
func (c *Chart) choiceIn(d Draft, lead string, own Body) Choice {
	ch := Choice{Version: d}
	ch.Size = fitOf(d.BodyRow(lead), c.Way(), own[lead]).Size
	for i := range d.Body {
		row := &d.Body[i]
		x, ok := own[row.Key]
		if !ok || !row.complete() {
			continue
		}
		f := fitOf(row, c.Way(), x)
		f.Off = x.Sub(row.Values[ch.Size])
		f.Ease = d.easeOver(row.Key, ch.Size, x)
		f.Easy = easy(f.Ease)
		if c.complete(row.Key) {
			ch.Misses = ch.Misses.Add(f.Off.Abs())
		}
		if row.Key == lead {
			ch.Fits = slices.Insert(ch.Fits, 0, f)
		} else {
			ch.Fits = append(ch.Fits, f)
		}
	}
	return ch
}

// fitOf places a measure among the sizes of a row.
func fitOf(row *Row, way Between, x measure.Length) Fit {
	f := Fit{Key: row.Key, Own: x, Where: Inside}
	v := row.Values
	b := row.limitsBy(way)
	if b == nil {
		return f
	}
	from := 0 // the least x − b that is in the size
	if way == Larger && row.Limits == nil {
		from = 1
	}
	f.Size = -1
	for i := range v {
		if x.Cmp(b[i]) >= from {
			f.Size = i
		}
	}
	switch {
	case f.Size < 0:
		f.Size, f.Where, f.Beyond = 0, Below, v[0].Sub(x)
	case x.Cmp(b[len(v)]) >= from:
		f.Where, f.Beyond = Above, x.Sub(v[len(v)-1])
	}
	for a := range v[1:] {
		step, far := v[a+1].Sub(v[a]), x.Sub(v[a]).Mul(4)
		if v[a].Cmp(x) <= 0 && x.Cmp(v[a+1]) < 0 && far.Cmp(step) >= 0 && far.Cmp(step.Mul(3)) <= 0 {
			f.Between, f.Lower = true, a
		}
	}
	return f
}

// limitsBy gives where each size of a row begins, and where the last ends; nil for
// a row of one size.
func (r *Row) limitsBy(way Between) []measure.Length {
	v, n := r.Values, len(r.Values)
	switch {
	case r.Limits != nil:
		return r.Limits
	case n < 2:
		return nil
	}
	low, high := v[0].Sub(v[1].Sub(v[0])), v[n-1].Add(v[n-1].Sub(v[n-2])) // one step further on either side
	all := append(append([]measure.Length{low}, v...), high)
	switch way {
	case Larger:
		return all[:n+1]
	case Smaller:
		return all[1:]
	}
	b := make([]measure.Length, n+1)
	for i := range b {
		b[i] = halfWay(all[i], all[i+1])
	}
	return b
}

// easeOver is what the finished rows over a body row leave over somebody.
func (c *Chart) easeOver(key string, size int, own measure.Length) (all []Ease) {
	for i := range c.Finished {
		row := &c.Finished[i]
		if row.Over == key && row.Has(size) {
			all = append(all, Ease{row, row.Values[size].Sub(own), c.Ease(row)[size]})
		}
	}
	return
}

// easy says whether what is left is within a quarter of what is meant, everywhere.
func easy(all []Ease) bool {
	return len(all) > 0 && !slices.ContainsFunc(all, func(e Ease) bool {
		return e.Here.Sub(e.Meant).Abs().Mul(4).Cmp(e.Meant.Abs()) > 0
	})
}

// telling lists the measures not taken yet in which the drafts differ.
func (c *Chart) telling(own Body) (keys []string) {
	for _, row := range c.Drafts[0].Body {
		if _, ok := own[row.Key]; !ok && c.everywhere(row.Key) && c.draftsDiffer(row.Key) {
			keys = append(keys, row.Key)
		}
	}
	return
}

// draftsDiffer says whether some size of two drafts has another measure.
func (c *Chart) draftsDiffer(key string) bool {
	for _, name := range c.Sizes {
		var first *measure.Length
		for _, d := range c.Drafts {
			row, k := d.BodyRow(key), d.Index(name)
			switch {
			case !row.Has(k):
			case first == nil:
				first = &row.Values[k]
			case *first != row.Values[k]:
				return true
			}
		}
	}
	return false
}

func halfWay(a, b measure.Length) measure.Length { return a.Add(b).MulRat(big.NewRat(1, 2)) }
