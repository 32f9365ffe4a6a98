#include "lists/phone_page.h"

#include "lists/html_text.h"
#include "phone_page_parts.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace throwline::lists {

namespace {

/// More columns than this do not fit side by side on a telephone.
constexpr std::size_t kMostColumns = 3;

const std::string& text_under(const Table& table, const Row& row, std::string_view key) {
    static const std::string kNothing;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (table.columns[i].key == key) {
            return row.cells[i].text;
        }
    }
    return kNothing;
}

std::string head(const PhonePage& page) {
    return fmt::format(
        "<head>\n<meta charset=\"utf-8\">\n"
        "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
        "script-src 'sha256-{}'; style-src 'sha256-{}'; img-src data:; base-uri 'none'; "
        "form-action 'none'\">\n"
        "<meta name=\"color-scheme\" content=\"light dark\">\n"
        "<meta name=\"referrer\" content=\"no-referrer\">\n"
        "<title>{}</title>\n<style>{}</style>\n</head>\n",
        base64_of_hex(parts::kScriptSha256), base64_of_hex(parts::kStyleSha256),
        html_text(page.title), parts::kStyle);
}

std::string page_header(const PhonePage& page) {
    std::string html = fmt::format("<header>\n<h1>{}</h1>\n", html_text(page.title));
    for (const std::string& line : page.lines) {
        html += fmt::format("<p>{}</p>\n", html_text(line));
    }
    return html
           + fmt::format("<p>Made by Throwline from plan {}. Works without a network.</p>\n",
                         html_text(page.mark))
           + "</header>\n";
}

/// The root element alone, sized by the style sheet.
std::string_view svg_element(std::string_view document) {
    const std::size_t root = document.find("<svg");
    return root == std::string_view::npos ? std::string_view{} : document.substr(root);
}

std::string choice(std::string_view kind, std::string_view id, std::string_view name, bool chosen) {
    return fmt::format("<input type=\"{}\" id=\"{}\" name=\"{}\" autocomplete=\"off\"{}>\n", kind,
                       id, name, chosen ? " checked" : "");
}

std::string label(std::string_view id, std::string_view words) {
    return fmt::format("<label for=\"{}\">{}</label>", id, words);
}

std::string plan_section(const PhonePage& page) {
    std::string html = "<section id=\"plan\" class=\"plan\" aria-labelledby=\"plan-title\">\n"
                       "<h2 id=\"plan-title\">Floor plan</h2>\n";
    struct Size {
        std::string_view id;
        std::string_view words;
    };
    constexpr Size kSizes[] = {
        {"zoom-1", "Whole"}, {"zoom-2", "Larger"}, {"zoom-3", "Close"}, {"zoom-4", "Closest"}};
    constexpr Size kLayers[] = {{"show-cameras", "Cameras"},
                                {"show-lamps", "Lamps"},
                                {"show-people", "People"},
                                {"show-findings", "Findings"}};
    std::string sizes;
    std::string layers;
    for (const Size& size : kSizes) {
        html += choice("radio", size.id, "zoom", size.id == kSizes[0].id);
        sizes += label(size.id, size.words);
    }
    for (const Size& layer : kLayers) {
        html += choice("checkbox", layer.id, layer.id, true);
        layers += label(layer.id, layer.words);
    }
    html += fmt::format("<div class=\"choices sizes\" role=\"group\" aria-label=\"Size of the "
                        "floor plan\">{}</div>\n<div class=\"choices layers\" role=\"group\" "
                        "aria-label=\"What the floor plan shows\">{}</div>\n",
                        sizes, layers);
    html += fmt::format("<div class=\"floor\" tabindex=\"0\" role=\"group\" aria-label=\"Floor "
                        "plan of {}, to be scrolled\">\n",
                        html_text(page.title));
    html += svg_element(page.floor_plan_svg);
    return html + "</div>\n</section>\n";
}

/// Titles and texts of a row, without the columns named and those in which nothing stands.
std::string details_of(const Table& table, const Row& row,
                       std::initializer_list<std::string_view> without) {
    std::string html = "<dl>";
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const bool left_out =
            std::find(without.begin(), without.end(), table.columns[i].key) != without.end();
        if (!left_out && !row.cells[i].text.empty()) {
            html += fmt::format("<dt>{}</dt><dd>{}</dd>\n", html_text(table.columns[i].title),
                                html_text(row.cells[i].text));
        }
    }
    return html + "</dl>\n";
}

/// The rows of the camera cards for a shot, each under its beat.
std::string camera_details(const Table& cards, const std::string& shot) {
    std::string html;
    for (const Section& section : cards.sections) {
        for (const Row& row : section.rows) {
            if (text_under(cards, row, "shot") == shot) {
                html += fmt::format("<h3>Set up for beat {}</h3>\n",
                                    html_text(text_under(cards, row, "beat")));
                html += details_of(cards, row,
                                   {"shot", "beat", "subjects", "size", "composition", "notes",
                                    "lens_height_m", "focal_mm", "stop_t", "move_m", "move_to"});
            }
        }
    }
    return html;
}

std::string shot_card(const PhonePage& page, const Row& row) {
    const auto text = [&](std::string_view key) {
        return html_text(text_under(page.shots, row, key));
    };
    const std::string shot = text("shot");
    const std::string size = text("size_wanted").empty() ? text("size_got") : text("size_wanted");
    const std::string composition = text("composition");
    return fmt::format(
        "<li class=\"shot\" data-shot=\"{0}\" data-camera=\"{1}\">"
        "<label><input type=\"checkbox\" autocomplete=\"off\" aria-label=\"Shot {0} is done\">"
        "</label>\n<details><summary><b>{0}</b><em>{2}</em><i>{1}</i><span>{3}{4}{5}</span>"
        "</summary>\n<div class=\"inside\">{6}{7}</div></details></li>\n",
        shot, text("camera"), size, text("subjects"),
        composition.empty() || text("subjects").empty() ? "" : ": ", composition,
        details_of(page.shots, row, {"shot", "camera", "subjects", "composition"}),
        camera_details(page.camera_cards, text_under(page.shots, row, "shot")));
}

/// A choice of camera, and only the shots that are left; shown once the script works.
std::string shot_choices(const PhonePage& page) {
    std::string options;
    std::set<std::string> told;
    for (const Section& section : page.shots.sections) {
        for (const Row& row : section.rows) {
            const std::string camera = html_text(text_under(page.shots, row, "camera"));
            if (told.insert(camera).second) {
                options += fmt::format("<option value=\"{0}\">{0}</option>", camera);
            }
        }
    }
    return fmt::format("<div class=\"choices\" id=\"shot-choices\" hidden><select id=\"of-camera\" "
                       "aria-label=\"Shots of\" autocomplete=\"off\"><option value=\"\">all "
                       "cameras</option>{}</select><input type=\"checkbox\" id=\"only-left\" "
                       "autocomplete=\"off\">{}</div>\n",
                       options, label("only-left", "Only what is left"));
}

std::string remarks_of(const Section& section) {
    std::string html;
    for (const std::string& remark : section.remarks) {
        html += fmt::format("<p class=\"remark\">{}</p>\n", html_text(remark));
    }
    return html;
}

std::string shots_section(const PhonePage& page) {
    std::string html = "<section id=\"shots\" aria-labelledby=\"shots-title\">\n"
                       "<h2 id=\"shots-title\">Shots <small id=\"done-count\" "
                       "aria-live=\"polite\"></small></h2>\n";
    html += shot_choices(page);
    html += "<ul>\n";
    for (const Section& section : page.shots.sections) {
        for (const Row& row : section.rows) {
            html += shot_card(page, row);
        }
    }
    html += "</ul>\n";
    for (const Section& section : page.shots.sections) {
        html += remarks_of(section);
    }
    return html + "</section>\n";
}

std::string_view class_of(Topic topic) {
    switch (topic) {
    case Topic::none:
        return "";
    case Topic::people:
        return "people";
    case Topic::camera:
        return "camera";
    case Topic::lamp:
        return "lamp";
    }
    return "";
}

std::string order_row(const Table& order, const Row& row) {
    const auto text = [&](std::string_view key) { return html_text(text_under(order, row, key)); };
    const std::string way = text("length_m");
    const bool shot = row.topic == Topic::camera;
    return fmt::format("<li class=\"{}\"><b>{}</b> <i>{}{}</i><span>{}</span></li>\n",
                       class_of(row.topic), shot ? "Shot " + text("who") : text("who"),
                       shot ? "" : text("what"), way.empty() || shot ? way : " " + way,
                       text("details"));
}

std::string order_section(const PhonePage& page) {
    std::string html = "<section id=\"order\" aria-labelledby=\"order-title\">\n"
                       "<h2 id=\"order-title\">Running order</h2>\n";
    for (const Section& section : page.running_order.sections) {
        html += fmt::format("<h3>{}</h3>\n<ol class=\"beat\">\n", html_text(section.heading));
        for (const Row& row : section.rows) {
            html += order_row(page.running_order, row);
        }
        html += "</ol>\n" + remarks_of(section);
    }
    return html + "</section>\n";
}

std::vector<std::size_t> filled_columns(const Table& table) {
    std::vector<std::size_t> columns;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (!is_empty_column(table, i)) {
            columns.push_back(i);
        }
    }
    return columns;
}

std::string_view align_of(const Column& column) {
    return column.align == Align::right ? " class=\"right\"" : "";
}

std::string rows_as_table(const Table& table, const Section& section,
                          const std::vector<std::size_t>& columns) {
    std::string html = "<div class=\"wide\"><table><thead><tr>";
    for (const std::size_t i : columns) {
        html += fmt::format("<th scope=\"col\"{}>{}</th>", align_of(table.columns[i]),
                            html_text(table.columns[i].title));
    }
    html += "</tr></thead><tbody>\n";
    for (const Row& row : section.rows) {
        html += row.total ? "<tr class=\"total\">" : "<tr>";
        for (const std::size_t i : columns) {
            html += fmt::format("<td{}>{}</td>", align_of(table.columns[i]),
                                html_text(row.cells[i].text));
        }
        html += "</tr>\n";
    }
    return html + "</tbody></table></div>\n";
}

std::string row_as_card(const Table& table, const Row& row,
                        const std::vector<std::size_t>& columns) {
    std::string html = row.total ? "<div class=\"row total\">" : "<div class=\"row\">";
    bool first = true;
    for (const std::size_t i : columns) {
        const std::string text = html_text(row.cells[i].text);
        if (text.empty()) {
            continue;
        }
        html += first ? fmt::format("<b>{}</b>", text)
                      : fmt::format("<span><small>{}</small>{}</span>",
                                    html_text(table.columns[i].title), text);
        first = false;
    }
    return html + "</div>\n";
}

std::string list_of(const Table& table) {
    const std::vector<std::size_t> columns = filled_columns(table);
    std::size_t rows = 0;
    std::string inside;
    for (const Section& section : table.sections) {
        if (!section.heading.empty()) {
            inside += fmt::format("<h3>{}</h3>\n", html_text(section.heading));
        }
        if (columns.size() <= kMostColumns && !section.rows.empty()) {
            inside += rows_as_table(table, section, columns);
        }
        for (const Row& row : section.rows) {
            inside += columns.size() > kMostColumns ? row_as_card(table, row, columns) : "";
            rows += row.total ? 0 : 1;
        }
        inside += remarks_of(section);
    }
    return fmt::format("<details class=\"list\"><summary>{}<small>{} {}</small></summary><div>\n{}"
                       "</div></details>\n",
                       html_text(table.title), rows, rows == 1 ? "row" : "rows", inside);
}

std::string lists_section(const PhonePage& page) {
    std::string html = "<section id=\"lists\" aria-labelledby=\"lists-title\">\n"
                       "<h2 id=\"lists-title\">Lists</h2>\n";
    for (const Table& table : page.lists) {
        html += list_of(table);
    }
    return html + "</section>\n";
}

std::string finding_item(const PageFinding& finding) {
    const std::string where =
        finding.where.empty() ? "" : fmt::format(" <small>{}</small>", html_text(finding.where));
    const std::string accepted =
        finding.accepted.empty()
            ? ""
            : fmt::format("<p><small>Accepted: {}</small></p>", html_text(finding.accepted));
    return fmt::format("<li class=\"finding {0}\"><b>{1}</b><div><p><strong>{0}</strong>{2}</p>"
                       "<p>{3}</p>{4}</div></li>\n",
                       html_text(finding.severity), finding.number, where,
                       html_text(finding.message), accepted);
}

std::string findings_section(const PhonePage& page) {
    std::string html = fmt::format("<section id=\"findings\" aria-labelledby=\"findings-title\">\n"
                                   "<h2 id=\"findings-title\">Findings <small>{} in all, worst "
                                   "first</small></h2>\n<ol>\n",
                                   page.findings.size());
    for (const PageFinding& finding : page.findings) {
        html += finding_item(finding);
    }
    return html + "</ol>\n</section>\n";
}

std::string cautions_section(const PhonePage& page) {
    std::string html = "<section id=\"cautions\" aria-labelledby=\"cautions-title\">\n"
                       "<h2 id=\"cautions-title\">Cautions</h2>\n<ul class=\"cautions\">\n";
    for (const std::string& caution : page.cautions) {
        html += fmt::format("<li>{}</li>\n", html_text(caution));
    }
    return html + "</ul>\n</section>\n";
}

constexpr std::string_view kParts = "<nav aria-label=\"Parts of this page\"><ul>"
                                    "<li><a href=\"#plan\">Plan</a></li>"
                                    "<li><a href=\"#shots\">Shots</a></li>"
                                    "<li><a href=\"#order\">Order</a></li>"
                                    "<li><a href=\"#lists\">Lists</a></li>"
                                    "<li><a href=\"#findings\">Findings</a></li>"
                                    "<li><a href=\"#cautions\">Cautions</a></li>"
                                    "</ul></nav>\n";

} // namespace

std::string phone_page(const PhonePage& page) {
    std::string html = "<!doctype html>\n<html lang=\"en\">\n" + head(page);
    html += fmt::format("<body data-production=\"{}\">\n", html_text(page.title));
    html += "<a class=\"unseen skip\" href=\"#shots\">To the shots</a>\n";
    html += page_header(page);
    html += "<main>\n";
    html += plan_section(page);
    html += shots_section(page);
    html += order_section(page);
    html += lists_section(page);
    html += findings_section(page);
    html += cautions_section(page);
    html += "</main>\n";
    html += kParts;
    html += fmt::format("<script>{}</script>\n</body>\n</html>\n", parts::kScript);
    return html;
}

} // namespace throwline::lists
