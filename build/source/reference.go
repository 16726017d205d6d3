package source

import (
	"net/url"
	"path"
	"regexp"
	"strings"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/file"
	"noonbook/build/form"
	"noonbook/build/problem"
)

// A reference is a link or picture that points into the content folder.
type reference struct {
	target string // as written
	at     problem.Place
	image  *ast.Image // of a picture
	link   *ast.Link  // of a link
	staff  bool       // it stands in an answer or a staff note
	lead   *Lead      // in the unit that is read
}

// node is the reference in the tree.
func (ref reference) node() ast.Node {
	if ref.image != nil {
		return ref.image
	}
	return ref.link
}

// A Lead is where a link or picture of a lesson leads in its unit, and what is known of it
// there. It is no part of the tree, which says what the file says, whatever else is in the
// unit.
type Lead struct {
	Target        []byte // in the handbook
	Nowhere       bool   // of a link: what it leads to does not stand here, so that it is plain words
	Title         string // of a link: of the page, for paper, where a link leads nowhere
	Width, Height int    // of a picture; 0 where they are not known
	Inset         *Inset // of a picture: the hand-drawn one that it is, nil for one in a file of its own
}

// Link returns where a link leads.
func (l *Lesson) Link(n *ast.Link) Lead { return l.lead(n, n.Destination) }

// Picture returns which picture a picture is.
func (l *Lesson) Picture(n *ast.Image) Lead { return l.lead(n, n.Destination) }

func (l *Lesson) lead(n ast.Node, written []byte) Lead {
	if lead := l.leads[n]; lead != nil {
		return *lead
	}
	return Lead{Target: written}
}

// likeFact finds what looks like a placeholder in a place that has no slots.
var likeFact = regexp.MustCompile(`\{[\pL\d_-]+\.[^}]*\}`)

// image checks a picture: its alternative text is an attribute and can hold no
// placeholder.
func (v *visitor) image(n *ast.Image) {
	_ = ast.Walk(n, func(c ast.Node, entering bool) (ast.WalkStatus, error) {
		if b, ok := c.(*brace); ok && entering {
			v.problems.Add(v.at(b.offset), "a picture's alternative text cannot hold a placeholder; put it below the picture")
		}
		return ast.WalkContinue, nil
	})
	v.link(n.Destination, n.Title, n.Pos(), reference{image: n, staff: v.forStaff(n)})
}

// forStaff reports whether the class edition goes without a node of the lesson.
func (v *visitor) forStaff(n ast.Node) bool {
	return forStaff(n) || BlockReader.Of(v.lesson.Block) == Staff
}

func (v *visitor) link(destination, title []byte, offset int, ref reference) {
	target := string(destination)
	at := v.at(offset)
	unescaped, err := url.PathUnescape(target)
	if err != nil {
		unescaped = target
	}
	if likeFact.MatchString(unescaped) || likeFact.Match(title) {
		v.problems.Add(at, "a placeholder cannot stand in a link's target or title")
		return
	}
	u, err := url.Parse(target)
	if err == nil && u.Scheme == "" && u.Host == "" {
		ref.target, ref.at = target, at
		v.lesson.links = append(v.lesson.links, ref)
		return
	}
	if ref.image != nil {
		v.problems.Add(at, "picture %s is not in the content folder; a handbook loads nothing from the network", target)
		return
	}
	v.scheme(target, offset)
}

func (v *visitor) scheme(target string, offset int) {
	if u, err := url.Parse(target); err == nil {
		switch u.Scheme {
		case "http", "https", "mailto", "": // an address without scheme is a mail address <a@b.c>
			return
		}
	}
	v.problems.Add(v.at(offset), "link %s is not a web address, a mail address or a file of the content folder", target)
}

// pageNames gives each lesson the name of its page: the file's name without
// folder, number and ending. Two lessons cannot have one page.
func (r *reader) pageNames() {
	taken := map[string]*Lesson{}
	for _, l := range r.unit.Lessons {
		stem := strings.ReplaceAll(unnumbered(strings.ToLower(l.Stem())), " ", "-")
		l.Page = stem + ".html"
		at := problem.Place{File: l.File, Line: 1, Column: 1}
		if err := file.Sound(l.Page); err != nil {
			r.problems.Add(at, "the page of this lesson cannot be written: %v", err)
		}
		if stem == "index" {
			r.problems.Add(at, "index is the name of the cover; give the file another name")
		}
		if other := taken[file.Folded(stem)]; other != nil {
			r.problems.Add(at, "two lessons would be the page %s.html: %s is the other", stem, other.File)
		}
		taken[file.Folded(stem)] = l
	}
	for stem, l := range taken { // of each lesson come sheets
		for _, kind := range []string{"day-", "pupil-", "card-"} {
			if other := taken[file.Folded(kind)+stem]; other != nil && l.Part() == PartLesson {
				r.problems.Add(problem.Place{File: other.File, Line: 1, Column: 1}, "%s is the name of a sheet of %s; give the file another name", other.Page, l.File)
			}
		}
	}
}

// references resolves links between lessons and collects the files that
// lessons refer to.
func (r *reader) references() error {
	files := map[string]string{} // name in the handbook, folded → source
	for _, f := range r.unit.Files {
		files[file.Folded(f.Name)] = f.Source
	}
	for _, l := range r.unit.Lessons {
		l.leads = map[ast.Node]*Lead{}
		for _, ref := range l.links {
			ref.lead = &Lead{Target: []byte(ref.target)}
			l.leads[ref.node()] = ref.lead
			if err := r.reference(l, ref, files); err != nil {
				return err
			}
		}
	}
	return nil
}

func (r *reader) reference(l *Lesson, ref reference, files map[string]string) error {
	u, err := url.Parse(ref.target)
	if err != nil {
		r.problems.Add(ref.at, "link %s is not a web address, a mail address or a file of the content folder", ref.target)
		return nil
	}
	if u.Path == "" { // within the page
		if u.Fragment != "" {
			r.anchor(l, u.Fragment, ref)
		}
		return nil
	}
	if strings.Contains(u.Path, `\`) {
		r.problems.Add(ref.at, `%s has a backslash; between folders stands a slash, as in art/leaf.svg`, ref.target)
		return nil
	}
	if strings.HasPrefix(u.Path, "/") {
		r.problems.Add(ref.at, "%s leads outside the content folder; want a path from the lesson's folder", ref.target)
		return nil
	}
	name := path.Join(path.Dir(l.name), u.Path)
	if name == ".." || strings.HasPrefix(name, "../") {
		r.problems.Add(ref.at, "%s leads outside the content folder", ref.target)
		return nil
	}
	if strings.EqualFold(path.Ext(name), ".md") && ref.image == nil {
		r.page(l, name, u.Fragment, ref)
		return nil
	}
	return r.carry(name, ref, files)
}

// anchor checks that a lesson has the heading that a reference names. Where the heading
// does not stand at this school the reference leads nowhere.
func (r *reader) anchor(l *Lesson, fragment string, ref reference) {
	if why := l.gone[fragment]; why != "" && ref.link != nil && !l.Anchors[fragment] {
		r.problems.Warn(ref.at, "%s has no heading #%s at this school (%s), so the link is plain words here; put the sentence into such a block too", l.File, fragment, why)
		ref.lead.Nowhere = true
		return
	}
	if l.private[fragment] && !ref.staff && ref.link != nil {
		r.problems.Add(ref.at, "%s#%s is for staff alone, and the class reads this link; lead it elsewhere, or put it where staff reads it", l.File, fragment)
	}
	if !l.Anchors[fragment] {
		var names []string
		for name := range l.Anchors {
			names = append(names, name)
		}
		r.problems.Add(ref.at, "%s has no heading #%s%s", l.File, fragment, form.Meant(fragment, names))
	}
}

// page points a link at the page of another lesson.
func (r *reader) page(from *Lesson, name, fragment string, ref reference) {
	wanted := file.Decomposed(name)
	var names []string
	for _, l := range r.unit.Lessons {
		if file.Decomposed(l.name) != wanted {
			names = append(names, l.name)
			continue
		}
		ref.lead.Target = []byte(l.Page)
		if BlockReader.Of(l.Block) == Staff && !ref.staff {
			r.problems.Add(ref.at, "%s is a page for staff alone, and the class reads this link; lead it elsewhere, or put it where staff reads it", l.File)
		}
		if ref.link != nil && !strings.Contains(strings.ToLower(wordsOf(ref.link, from.Source)), strings.ToLower(l.Title())) {
			ref.lead.Title = l.Title()
		}
		if fragment != "" {
			ref.lead.Target = []byte(l.Page + "#" + fragment)
			r.anchor(l, fragment, ref)
		}
		return
	}
	if gone, ok := r.left(name); ok && ref.link != nil {
		if fragment != "" && gone.gone[fragment] == "" {
			r.anchor(gone, fragment, ref)
		}
		ref.lead.Nowhere = true
		return
	}
	r.problems.Add(ref.at, "lesson %s is not in the content folder%s", ref.target, form.Meant(name, names))
}

// wordsOf returns the plain words of a link.
func wordsOf(n ast.Node, src []byte) string {
	var b strings.Builder
	_ = ast.Walk(n, func(c ast.Node, entering bool) (ast.WalkStatus, error) {
		if t, ok := c.(*ast.Text); ok && entering {
			b.Write(t.Segment.Value(src))
			b.WriteByte(' ')
		}
		return ast.WalkContinue, nil
	})
	return strings.Join(strings.Fields(b.String()), " ")
}
