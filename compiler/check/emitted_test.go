package check_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"seamwarden/compiler/check"
)

// TestEveryFindingIsRegistered reads the sources of the module: each name that is
// given to a finding must be a registered rule, and each registered rule must be
// given to one.
func TestEveryFindingIsRegistered(t *testing.T) {
	e := &emitted{t: t, ids: map[string]token.Position{}, makers: map[string]bool{}, consts: map[string]string{}}
	e.read("../..")
	e.findMakers()
	for _, f := range e.files {
		e.collect(f)
	}
	if len(e.ids) < 60 {
		t.Errorf("only %d names of findings in the sources: the search finds too little", len(e.ids))
	}
	for id, at := range e.ids {
		if check.Find(id) == nil {
			t.Errorf("%s: %s is given to a finding and is no registered rule", at, id)
		}
	}
	for _, r := range check.Rules() {
		if _, ok := e.ids[r.ID]; !ok {
			t.Errorf("%s is registered, and no finding has that name", r.ID)
		}
	}
}

// emitted gathers the rule names that stand in the sources.
type emitted struct {
	t      *testing.T
	set    *token.FileSet
	files  []*ast.File
	ids    map[string]token.Position
	makers map[string]bool   // functions whose first parameter is the name of a rule
	consts map[string]string // named constants that hold text
}

func (e *emitted) read(root string) {
	e.set = token.NewFileSet()
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(e.set, name, nil, 0)
		if err == nil {
			e.files = append(e.files, f)
		}
		return err
	})
	if err != nil {
		e.t.Fatal(err)
	}
	for _, f := range e.files {
		ast.Inspect(f, func(n ast.Node) bool {
			if v, ok := n.(*ast.ValueSpec); ok {
				for i, name := range v.Names {
					if i < len(v.Values) {
						if s, ok := literal(v.Values[i]); ok {
							e.consts[name.Name] = s
						}
					}
				}
			}
			return true
		})
	}
}

// findMakers looks for the functions that put their parameter into Finding.Rule.
func (e *emitted) findMakers() {
	e.each(func(in *ast.FuncDecl, value ast.Expr) {
		id, ok := value.(*ast.Ident)
		if !ok || in == nil || len(in.Type.Params.List) == 0 {
			return
		}
		if first := in.Type.Params.List[0]; len(first.Names) > 0 && first.Names[0].Name == id.Name {
			e.makers[in.Name.Name] = true
		}
	})
}

// each calls f for every value that becomes the rule of a finding.
func (e *emitted) each(f func(in *ast.FuncDecl, value ast.Expr)) {
	for _, file := range e.files {
		for _, d := range file.Decls {
			fn, _ := d.(*ast.FuncDecl)
			ast.Inspect(d, func(n ast.Node) bool {
				lit, ok := n.(*ast.CompositeLit)
				if !ok {
					return true
				}
				for _, el := range lit.Elts {
					if kv, ok := el.(*ast.KeyValueExpr); ok && isName(kv.Key, "Rule") && isFinding(lit) {
						f(fn, kv.Value)
					}
				}
				return true
			})
		}
	}
}

// collect notes the names in a file: in findings, in calls of makers, and in the
// registrations of rules that find something themselves.
func (e *emitted) collect(file *ast.File) {
	ast.Inspect(file, func(n ast.Node) bool {
		switch x := n.(type) {
		case *ast.CallExpr:
			if id, ok := x.Fun.(*ast.Ident); ok && e.makers[id.Name] && len(x.Args) > 0 {
				e.note(x.Args[0])
			}
			if id, ok := x.Fun.(*ast.Ident); ok && id.Name == "order" && len(x.Args) > 2 {
				e.note(x.Args[2]) // the rules of order are registered by a function
			}
		case *ast.CompositeLit:
			if isFinding(x) {
				for _, el := range x.Elts {
					if kv, ok := el.(*ast.KeyValueExpr); ok && isName(kv.Key, "Rule") {
						e.note(kv.Value)
					}
				}
			}
			if isName(x.Type, "Rule") {
				e.registration(x)
			}
		}
		return true
	})
}

// registration notes a rule that has a function to run: it reports under its own
// name.
func (e *emitted) registration(lit *ast.CompositeLit) {
	var id ast.Expr
	runs := false
	for _, el := range lit.Elts {
		if kv, ok := el.(*ast.KeyValueExpr); ok {
			if isName(kv.Key, "ID") {
				id = kv.Value
			}
			runs = runs || isName(kv.Key, "run")
		}
	}
	if runs && id != nil {
		e.note(id)
	}
}

func (e *emitted) note(value ast.Expr) {
	at := e.set.Position(value.Pos())
	if s, ok := literal(value); ok {
		e.ids[s] = at
		return
	}
	if id, ok := value.(*ast.Ident); ok {
		if s, ok := e.consts[id.Name]; ok {
			e.ids[s] = at
		} else if !slices.Contains([]string{"rule", "id"}, id.Name) {
			e.t.Errorf("%s: the rule %s is neither text nor a constant", at, id.Name)
		}
	}
}

func literal(e ast.Expr) (string, bool) {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	s, err := strconv.Unquote(lit.Value)
	return s, err == nil
}

func isName(e ast.Expr, name string) bool {
	id, ok := e.(*ast.Ident)
	return ok && id.Name == name
}

// isFinding reports whether a literal is a finding.Finding.
func isFinding(lit *ast.CompositeLit) bool {
	s, ok := lit.Type.(*ast.SelectorExpr)
	return ok && s.Sel.Name == "Finding" || isName(lit.Type, "Finding")
}
