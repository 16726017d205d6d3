package class

import (
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

func classFacts() entry.Entry {
	return entry.Entry{
		Name:     "class-facts",
		Summary:  "How many pupils there are and how they form groups.",
		Settings: form.Keys{school.Name, school.ClassPupils, school.ClassGroupSize},
		Facts: []entry.Fact{
			{Name: "school", Doc: "name of the school"},
			{Name: "pupils", Doc: "number of pupils"},
			{Name: "groups", Doc: "number of groups; their sizes differ by at most one"},
			{Name: "group_size", Doc: "pupils in the largest group"},
		},
		Sources:  []string{"unit.toml of the school"},
		Harmless: "Counts of the class and its groups, to read.",
		Reckon: func(v form.Values) (result.Result, error) {
			groups := classroom.Groups(school.ClassPupils.Of(v), school.ClassGroupSize.Of(v))
			largest := 0
			if len(groups) > 0 {
				largest = groups[0]
			}
			return result.Result{Facts: []result.Fact{
				{Name: "school", Value: say.Text(school.Name.Of(v))},
				{Name: "pupils", Value: say.Count(school.ClassPupils.Of(v))},
				{Name: "groups", Value: say.Count(len(groups))},
				{Name: "group_size", Value: say.Count(largest)},
			}}, nil
		},
	}
}
