package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"strconv"
)

// node is a struct of the grammar.
type node struct {
	name   string
	fields []field
	extent bool // it keeps the words it was read from
}

// field is a field of a node: its type as written, and its part of the grammar.
// An embedded node has no tag.
type field struct{ name, typ, tag string }

// nodes finds the nodes in the grammar's files, in their order.
func nodes(dir string) (all []node, err error) {
	files, err := filepath.Glob(filepath.Join(dir, "grammar*.go"))
	if err != nil {
		return nil, err
	}
	for _, name := range files {
		if len(name) > len("_test.go") && name[len(name)-len("_test.go"):] == "_test.go" {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			return nil, err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if spec, ok := n.(*ast.TypeSpec); ok {
				if s, ok := spec.Type.(*ast.StructType); ok {
					if n := nodeOf(spec.Name.Name, s); n.hasGrammar() {
						all = append(all, n)
					}
				}
			}
			return true
		})
	}
	return all, nil
}

func nodeOf(name string, s *ast.StructType) node {
	n := node{name: name}
	for _, f := range s.Fields.List {
		typ, tag := typeText(f.Type), ""
		if f.Tag != nil {
			text, _ := strconv.Unquote(f.Tag.Value)
			tag = reflect.StructTag(text).Get("parser")
		}
		switch {
		case len(f.Names) == 0 && typ == "Extent", len(f.Names) == 1 && f.Names[0].Name == "Tokens":
			n.extent = true
		case len(f.Names) == 0:
			n.fields = append(n.fields, field{name: typ, typ: typ})
		case tag != "":
			n.fields = append(n.fields, field{f.Names[0].Name, typ, tag})
		}
	}
	return n
}

func (n *node) hasGrammar() bool {
	for _, f := range n.fields {
		if f.tag != "" {
			return true
		}
	}
	return false
}

// typeText writes the types that nodes have fields of.
func typeText(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.StarExpr:
		return "*" + typeText(e.X)
	case *ast.ArrayType:
		return "[]" + typeText(e.Elt)
	case *ast.SelectorExpr:
		return typeText(e.X) + "." + e.Sel.Name
	}
	return "?"
}
