package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"seamwarden/compiler"
)

// chooser is the flags that say which garments are meant.
type chooser struct {
	choice compiler.Choice
	ways   []string // choice=way
}

func (c *chooser) flags(f *pflag.FlagSet) {
	f.StringVar(&c.choice.View, "view", "", "only this `view`")
	f.StringVar(&c.choice.Size, "size", "", "only this `size`")
	f.StringSliceVar(&c.choice.With, "with", nil, "with this `option`")
	f.StringSliceVar(&c.choice.Without, "without", nil, "without this `option`")
	f.StringSliceVar(&c.ways, "choose", nil, "one way of a choice, as `CHOICE=WAY`")
}

// settle reads the ways of choices.
func (c *chooser) settle() error {
	c.choice.Ways = map[string]string{}
	for _, s := range c.ways {
		choice, way, ok := strings.Cut(s, "=")
		if !ok || choice == "" || way == "" {
			return fmt.Errorf("--choose takes a choice, an equals sign and a way, such as band=bound, not %q", s)
		}
		if old, twice := c.choice.Ways[choice]; twice && old != way {
			return fmt.Errorf("--choose gives two ways for %s: %s and %s", choice, old, way)
		}
		c.choice.Ways[choice] = way
	}
	return nil
}
