"use strict";
(function () {
  var all = function (selector, root) {
    return Array.prototype.slice.call((root || document).querySelectorAll(selector));
  };
  var open = function (target) {
    for (var node = target; node; node = node.parentElement) {
      if (node.tagName === "DETAILS") { node.open = true; }
    }
  };
  var follow = function () {
    var target = location.hash.length > 1 && document.getElementById(location.hash.slice(1));
    if (target) { open(target); target.scrollIntoView(); }
  };
  window.addEventListener("hashchange", follow);
  follow();

  var form = document.getElementById("filters");
  var shown = document.getElementById("shown");
  var rows = all(".finding");
  var matches = function (row, name, wanted) {
    return !wanted || row.dataset[name].split(name === "things" ? " " : "\n").indexOf(wanted) >= 0;
  };
  var filter = function () {
    var chosen = {}, found = 0, total = 0, any = false;
    all("select", form).forEach(function (each) { chosen[each.name] = each.value; any = any || each.value; });
    rows.forEach(function (row) {
      var count = Number(row.dataset.count);
      var fits = Object.keys(chosen).every(function (name) { return matches(row, name, chosen[name]); });
      row.classList.toggle("gone", !fits);
      total += count;
      found += fits ? count : 0;
    });
    [".card", "details.brief", ".place"].forEach(function (holder) {
      all(holder).forEach(function (each) {
        var some = all(".finding:not(.gone)", each).length > 0;
        each.classList.toggle("gone", !some);
        if (holder === "details.brief" && any) { each.open = some; }
      });
    });
    shown.textContent = any ? found + " of " + total + " findings are shown." : "All " + total + " findings are listed.";
  };
  form.hidden = false;
  form.addEventListener("change", filter);
  form.addEventListener("reset", function () { setTimeout(filter, 0); });
  form.addEventListener("submit", function (event) { event.preventDefault(); });
  filter();

  var workings = document.getElementById("workings");
  var set = function (state) {
    return function () { all("details", workings).forEach(function (each) { each.open = state; }); };
  };
  document.getElementById("tools").hidden = false;
  document.getElementById("open-all").addEventListener("click", set(true));
  document.getElementById("close-all").addEventListener("click", set(false));

  var short = document.getElementById("short");
  document.getElementById("printing").hidden = false;
  short.addEventListener("change", function () { document.body.classList.toggle("short", short.checked); });
  document.getElementById("print").addEventListener("click", function () { window.print(); });

  var closed = [];
  window.addEventListener("beforeprint", function () {
    closed = all("details:not([open])");
    closed.forEach(function (each) { each.open = true; });
  });
  window.addEventListener("afterprint", function () {
    closed.forEach(function (each) { each.open = false; });
  });
})();
