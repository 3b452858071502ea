"""Problem codes of the floor expressions: what a rule's author can get wrong."""

CODES: dict[str, tuple[str, str]] = {
    "expression-empty": (
        "An expression without content",
        "A rule says in 'must_hold' what must be true. Write it there."),
    "expression-length": (
        "The expression is too long",
        "An expression longer than the limit 'length' is not read. Split the rule, or make a "
        "quantity of a part of it."),
    "expression-words": (
        "The expression has too many words",
        "An expression with more words and signs than the limit 'words' is not read. Split the "
        "rule; a long list of values can be a limit."),
    "expression-depth": (
        "Parts lie too deep inside one another",
        "Brackets, signs, calls and 'if' may stand inside one another down to the limit 'depth'. "
        "Take superfluous brackets out, or split the rule."),
    "expression-loops": (
        "Too many loops inside one another",
        "Every collection function inside another multiplies the work, so the limit 'loops' says "
        "how deep they may go. Make a quantity of the inner one."),
    "expression-list-size": (
        "The list is too long",
        "A list written out holds as many values as the limit 'collection' says. Make it a limit."),
    "expression-number-size": (
        "The number is too large or too long",
        "A number has at most as many characters as the limit 'number' says, and an exponent up "
        "to the limit 'exponent'."),
    "expression-text-size": (
        "The text is too long",
        "A quoted text has at most as many characters as the limit 'text' says."),
    "expression-name-length": (
        "The name is too long",
        "A name has at most as many characters as the limit 'name' says."),
    "expression-character": (
        "A character that means nothing here",
        "Expressions are made of plain letters, digits and the signs of arithmetic. Often an "
        "invisible character came along when text was copied."),
    "expression-name-letters": (
        "A name with foreign letters",
        "Names consist of the letters a to z, digits and underscores. Some letters look like "
        "these and are not."),
    "expression-name-hidden": (
        "A name that starts with an underscore",
        "No field, quantity or limit has such a name."),
    "expression-number": (
        "Not a number",
        "A number is written in decimal digits, with a point and a digit on either side of it "
        "where needed: 12, 0.8, 1e6. A date stands in quotes."),
    "expression-unit": (
        "A number with a unit",
        "A figure with a unit never hides in an expression: give it a name and a citation in "
        "'limits' and compare with the name."),
    "expression-quotes": (
        "Not the quotes of a text",
        "A text stands between two straight quotes of the same kind: \"LFP\" or 'LFP'."),
    "expression-text-open": (
        "A text that is never closed",
        "The quote that closes the text is missing, or stands on another line."),
    "expression-text-escape": (
        "A backslash in a text",
        "Nothing is escaped in a text. Leave the backslash out."),
    "expression-text-prefix": (
        "A letter before a text",
        "Texts are plain: no letter stands before the quotes, and no values are put into them."),
    "expression-sign-for-word": (
        "A sign where a word belongs",
        "Conditions are joined with the words 'and', 'or' and 'not'."),
    "expression-sign": (
        "A sign written another way",
        "The comparisons are <, <=, >, >=, == and !=; the calculations are +, -, * and /."),
    "expression-equals": (
        "A single equals sign",
        "Nothing is assigned in an expression. Two values are compared with '=='."),
    "expression-operator": (
        "A sign the language does not have",
        "There are + - * / and comparisons; no powers, remainders, assignments or other signs."),
    "expression-word": (
        "A word the language does not have",
        "The words are and, or, not, in, if, else, for, true and false; all others are names."),
    "expression-word-case": (
        "A word in capital letters",
        "The words of the language are written in small letters."),
    "expression-incomplete": (
        "The expression ends too early",
        "After an operator or an opening bracket something must follow."),
    "expression-operand": (
        "A value is missing",
        "An operator or word stands where a value, a name or an opening bracket belongs."),
    "expression-operator-missing": (
        "Two values without an operator between them",
        "Put a comparison, a sign of arithmetic, 'and' or 'or' between them."),
    "expression-name-missing": (
        "A point without a name after it",
        "After a point follows the name of a field, a relation or a quantity."),
    "expression-bracket": (
        "Brackets that do not match",
        "Every opening bracket needs a closing one of its kind."),
    "expression-comma": (
        "A comma outside a list or call",
        "A comma separates the values of a list or of a call. Decimals are written with a point."),
    "expression-else": (
        "An 'if' without 'else'",
        "A choice names both values: this if condition else that. When a rule applies at all is "
        "said by 'applies_when'."),
    "expression-star": (
        "A star where a value belongs",
        "A star multiplies two values. Nothing is unpacked."),
    "expression-subscript": (
        "Square brackets after a value",
        "Things are not picked out by number or name; the collection functions look at each."),
    "expression-attribute": (
        "A field of something that has none",
        "Only things aboard have fields: values, texts and results of functions do not."),
    "expression-call": (
        "Something called that is no function",
        "Only the functions of the language are called; fields and results are not."),
    "expression-function": (
        "No such function",
        "The functions are abs, all, any, count, exists, max, min, sqrt and sum."),
    "expression-named-argument": (
        "A named value in a call",
        "The values in the brackets of a function have no names."),
    "expression-loop": (
        "A loop where none can stand",
        "Several things are looked at with a collection function: all(... for x in ...), any, "
        "count, sum, min or max, with one 'for' and at most one 'if'."),
    "expression-list": (
        "Something other than a value in a list",
        "A list holds numbers or texts written out."),
    "expression-list-outside": (
        "A list where a value belongs",
        "A list stands to the right of 'in' or 'not in' only."),
    "expression-list-needed": (
        "No list after 'in'",
        "'in' asks whether a value is one of a list: (\"a\", \"b\"), or a limit that holds texts."),
    "expression-chain": (
        "'in' in a chain of comparisons",
        "'in' compares two things only. Join it to other comparisons with 'and'."),
    "expression-name": (
        "An unknown name",
        "An expression starts with the subject of its rule, with record, vessel, survey or wiring, "
        "with the name of a limit, or with answer."),
    "expression-out-of-scope": (
        "A subject the rule is not about",
        "A rule sees the thing it is about and what that thing leads to. Follow a relation, or "
        "look through all of the record's."),
    "expression-field": (
        "An unknown field",
        "The name is neither a recorded field nor a relation nor a quantity of that subject."),
    "expression-answer": (
        "An unknown question",
        "'answer.' is followed by the id of a question of the pack."),
    "expression-variable": (
        "A loop's name that is taken",
        "The name for each of several things must not mean something else already."),
    "expression-many": (
        "Several things where one belongs",
        "A relation to several things is looked at with a collection function."),
    "expression-many-needed": (
        "One thing where several belong",
        "A collection function runs through a relation to several things."),
    "expression-exists": (
        "'exists' of something that is not a thing",
        "exists(...) asks whether a related thing is there, such as a device. Whether a field is "
        "recorded is no question for a rule: without it the rule is not assessed."),
    "expression-thing": (
        "A whole thing where a value belongs",
        "A thing is not compared or calculated with; one of its fields is."),
    "expression-opaque": (
        "A value no rule can use",
        "This quantity serves other quantities only."),
    "expression-arguments": (
        "The wrong values in the brackets of a function",
        "The function takes another number or kind of values; see its example."),
    "expression-type": (
        "Values of kinds that do not go together",
        "Numbers go with numbers, texts with texts, dates with dates."),
    "expression-not-a-condition": (
        "Neither true nor false",
        "A rule, a condition and both sides of 'and' and 'or' must be true or false. Compare the "
        "value with something."),
    "expression-dimension": (
        "Figures of different dimensions",
        "A voltage is compared with a voltage, a length with a length. A figure with a unit is a "
        "limit and is used by its name."),
    "expression-scale": (
        "Figures in units of different size",
        "Both measure the same, but the figures are kept in units of different size, so they "
        "cannot be compared as they are. Use a quantity that gives the figure in the right unit."),
    "expression-temperature": (
        "Arithmetic on temperatures",
        "Degrees Celsius do not count from zero: temperatures can be compared and subtracted; "
        "other arithmetic takes differences of temperatures."),
    "expression-choice": (
        "Not one of the choices",
        "The field holds one of a few words, and this is not one of them, so the comparison would "
        "always come out the same."),
    "expression-date": (
        "Not a date",
        "A date is compared with a text of the form year-month-day, such as \"2026-04-18\"."),
}
