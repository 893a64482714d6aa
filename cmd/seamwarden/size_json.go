package main

import (
	"encoding/json"
	"io"

	"seamwarden/compiler/size"
	"seamwarden/compiler/wording"
)

// sizeJSON is a choice of size for a program. Lengths are in millimetres.
type sizeJSON struct {
	Version int         `json:"version"`
	Pattern string      `json:"pattern"`
	Lead    string      `json:"lead"`  // the measure by which the size is chosen
	Size    string      `json:"size"`  // to take
	Draft   string      `json:"draft"` // to take; "" where there is one draft only
	Tied    bool        `json:"tied"`  // another draft is as near
	Ask     []string    `json:"ask,omitempty"`
	Drafts  []draftJSON `json:"drafts"`
	Say     []string    `json:"say"`
}

// draftJSON is what one draft gives.
type draftJSON struct {
	Draft    string    `json:"draft"`
	Size     string    `json:"size"`
	Misses   float64   `json:"misses"`
	Measures []fitJSON `json:"measures"`
}

// fitJSON is one measure in a draft.
type fitJSON struct {
	Measure string     `json:"measure"`
	Own     float64    `json:"own"`
	Size    string     `json:"size"`              // by this measure alone
	Where   string     `json:"where"`             // inside, below or above
	Off     float64    `json:"off"`               // own less the measure of the size to take
	Beyond  float64    `json:"beyond"`            // how far below or above the range
	Between []string   `json:"between,omitempty"` // the two sizes
	Ease    []easeJSON `json:"ease,omitempty"`
}

// easeJSON is what a finished measure leaves.
type easeJSON struct {
	Finished string  `json:"finished"`
	When     string  `json:"when,omitempty"`
	Here     float64 `json:"here"`
	Meant    float64 `json:"meant"`
}

func writeSize(w io.Writer, title string, c *size.Chosen, t *wording.SizeTold) error {
	best := c.Choices[c.Best]
	out := sizeJSON{Version: 1, Pattern: title, Lead: c.Lead, Size: best.Version.Sizes[best.Size], Draft: best.Version.Key, Tied: c.Tied, Ask: c.Ask,
		Say: append(append([]string{}, t.Say...), t.Others...)}
	for i := range c.Choices {
		out.Drafts = append(out.Drafts, draftOf(&c.Choices[i]))
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

func draftOf(c *size.Choice) draftJSON {
	sizes := c.Version.Sizes
	d := draftJSON{Draft: c.Version.Key, Size: sizes[c.Size], Misses: c.Misses.MM()}
	for _, f := range c.Fits {
		x := fitJSON{Measure: f.Key, Own: f.Own.MM(), Size: sizes[f.Size], Where: string(f.Where), Off: f.Off.MM(), Beyond: f.Beyond.MM()}
		if f.Between {
			x.Between = sizes[f.Lower : f.Lower+2]
		}
		for _, e := range f.Ease {
			x.Ease = append(x.Ease, easeJSON{e.Row.Key, e.Row.When, e.Here.MM(), e.Meant.MM()})
		}
		d.Measures = append(d.Measures, x)
	}
	return d
}
