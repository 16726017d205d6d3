package plan

import (
	"encoding/json"
	"fmt"
	"html/template"

	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// A resource describes a page to machines that gather teaching material:
// LearningResource of schema.org, as JSON-LD 1.1. What is not known is left out.
type resource struct {
	Context  string    `json:"@context"`
	Type     string    `json:"@type"`
	Name     string    `json:"name"`
	About    string    `json:"description,omitempty"`
	Language string    `json:"inLanguage"`
	Kind     string    `json:"learningResourceType,omitempty"`
	Level    string    `json:"educationalLevel,omitempty"`
	Minutes  string    `json:"timeRequired,omitempty"` // ISO 8601, "PT50M"
	Teaches  []string  `json:"teaches,omitempty"`
	Keywords []string  `json:"keywords,omitempty"`
	Free     bool      `json:"isAccessibleForFree"`
	Part     *within   `json:"isPartOf,omitempty"`
	Provider *provider `json:"provider,omitempty"`
}

type within struct {
	Type string `json:"@type"`
	Name string `json:"name"`
}

type provider = within

// resource returns the element that describes the page of a lesson, or with no
// lesson the unit.
func (p *Plan) resource(d *draft, page typeset.Shell, l *source.Lesson) template.HTML {
	about := resource{
		Context: "https://schema.org", Type: "LearningResource",
		Name: page.Title, About: page.Summary, Language: p.words.Code, Free: true,
	}
	if l != nil && l.Part() == source.PartLesson && d.name == l.Page {
		about.Kind = "lesson"
		about.Teaches = source.BlockGoals.Of(l.Block)
		for _, term := range source.BlockVocabulary.Of(l.Block) {
			about.Keywords = append(about.Keywords, source.VocabularyTerm.Of(term))
		}
	}
	mark := d.mark(func(dst []byte, s *pressing) []byte {
		this := about
		this.Level = school.ClassName.Of(s.settings)
		this.Provider = &provider{"EducationalOrganization", school.Name.Of(s.settings)}
		unit := school.UnitTitle.Of(s.settings)
		if l == nil {
			this.Name, this.About, this.Kind = unit, school.UnitSummary.Of(s.settings), "unit"
		} else {
			this.Part = &within{"LearningResource", unit}
		}
		if this.Kind == "lesson" {
			held := s.calendar.Held[l.Number-1]
			this.Minutes = fmt.Sprintf("PT%dM", int((held.To - held.From).Minutes()))
		}
		js, err := json.Marshal(this) // escapes < > & too, so that no text ends the element
		if err != nil {
			return dst // only a value that JSON has no form for; there is none
		}
		return append(dst, js...)
	})
	return template.HTML(`<script type="application/ld+json">` + mark + `</script>`)
}
