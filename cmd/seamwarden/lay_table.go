package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"seamwarden/compiler"
	"seamwarden/compiler/check"
	"seamwarden/compiler/lay"
	"seamwarden/compiler/measure"
	"seamwarden/compiler/model"
)

// layTable prints how each lay came out: a heading for each cloth, width and set of
// garments, and a line for each size.
func layTable(w io.Writer, p *model.Pattern, l *compiler.Lays, outcome []compiler.Laid) (worst error) {
	names := check.Names(p)
	var before *model.Laying
	t := tabwriter.NewWriter(w, 0, 8, 2, ' ', 0)
	for i, one := range l.Wanted {
		if before == nil || before.Material != one.Material || before.Width != one.Width || before.Nap != one.Nap || before.Cond != one.Cond {
			_ = t.Flush()
			fmt.Fprintf(w, "\n  %s\n", layHeading(one, p.Space.Words(p.Space.Smallest(one.Cond, p.Valid), names)))
			fmt.Fprintln(t, "    size\tlength\tto buy\tused\tover the bound\thow it lies")
		}
		before = one
		size := "one"
		if one.Size >= 0 {
			size = p.Sizes.Sizes[one.Size]
		}
		switch o := outcome[i]; {
		case o.Lay != nil:
			fmt.Fprintf(t, "    %s\t%s\n", size, layLine(one, *o.Lay))
		case o.Err != nil:
			fmt.Fprintf(t, "    %s\tcannot be laid: %v\n", size, o.Err)
			worst = errFound
		default:
			fmt.Fprintf(t, "    %s\tnot looked for\n", size)
		}
	}
	_ = t.Flush()
	for _, n := range l.Not {
		fmt.Fprintf(w, "\n  Not known: %s.\n", n.What(p.Space.Words(p.Space.Smallest(n.Cond, p.Valid), names)))
	}
	return worst
}

func layHeading(l *model.Laying, where string) string {
	s := l.Material.Name + ", " + l.Width.String() + " wide"
	if l.Nap {
		s += ", with nap"
	}
	if where != "" {
		s += ", " + where
	}
	if l.SpareMM > 0 {
		s += fmt.Sprintf(" (with pieces that not all of them need: %.1f cm)", l.SpareMM/10)
	}
	return s
}

// layLine words a lay: its length as computed and as it is bought, how much of the cloth
// goes into parts, and how far it is above the length below which none can come.
func layLine(l *model.Laying, found lay.Lay) string {
	own := *l
	own.Found = &found
	n := own.Needs()
	buy := measure.InImperial(measure.YardsUp(n), measure.Cloth, true, measure.English) + ", " + measure.InMetric(measure.MetresUp(n), measure.Cloth, true, measure.English)
	over := "?"
	if bound, err := l.Job.Limit(found.Way); err == nil && bound > 0 {
		over = fmt.Sprintf("%.1f %%", 100*(float64(found.Length)/float64(bound)-1))
	}
	return fmt.Sprintf("%.1f cm\t%s\t%.1f %%\t%s\t%s", float64(found.Cloth())/(10*lay.Millimetre), buy, 100*l.Job.Density(found), over, found.Way.Words())
}
