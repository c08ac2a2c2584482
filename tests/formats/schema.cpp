#include "schema.hpp"

#include <libxml/parser.h>
#include <libxml/xmlschemas.h>

#include <cstdarg>
#include <cstdio>
#include <fstream>
#include <memory>
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

namespace formats {
namespace {

using Adapter = valijson::adapters::NlohmannJsonAdapter;

const valijson::Schema& schema() {
  static const std::unique_ptr<valijson::Schema> parsed = [] {
    static const nlohmann::json json = nlohmann::json::parse(std::ifstream(WATTFALL_SCHEMA));
    auto made = std::make_unique<valijson::Schema>();
    valijson::SchemaParser parser;
    parser.populateSchema(Adapter(json), *made);
    return made;
  }();
  return *parsed;
}

void append_fault(void* out, const char* format, ...) {
  char line[1000];
  va_list arguments;
  va_start(arguments, format);
  std::vsnprintf(line, sizeof line, format, arguments);
  va_end(arguments);
  *static_cast<std::string*>(out) += line;
}

}  // namespace

std::string schema_faults(const std::string& text) {
  const nlohmann::json json = nlohmann::json::parse(text, nullptr, false);
  if (json.is_discarded()) return "no JSON";
  valijson::Validator validator;
  valijson::ValidationResults results;
  if (validator.validate(schema(), Adapter(json), &results)) return "";
  std::string faults;
  for (valijson::ValidationResults::Error error; results.popError(error);) {
    for (const std::string& step : error.context) faults += step;
    faults += ": " + error.description + '\n';
  }
  return faults.empty() ? "not valid" : faults;
}

std::string junit_faults(const std::string& xml) {
  std::string faults;
  const std::string path = std::string(WATTFALL_TEST_DATA) + "/junit.xsd";
  const std::unique_ptr<xmlSchemaParserCtxt, decltype(&xmlSchemaFreeParserCtxt)> parser(xmlSchemaNewParserCtxt(path.c_str()), xmlSchemaFreeParserCtxt);
  const std::unique_ptr<xmlSchema, decltype(&xmlSchemaFree)> form(xmlSchemaParse(parser.get()), xmlSchemaFree);
  const std::unique_ptr<xmlDoc, decltype(&xmlFreeDoc)> document(
      xmlReadMemory(xml.data(), static_cast<int>(xml.size()), "report.xml", nullptr, XML_PARSE_NOERROR | XML_PARSE_NOWARNING | XML_PARSE_NONET), xmlFreeDoc);
  if (form == nullptr) return "no schema";
  if (document == nullptr) return "no XML";
  const std::unique_ptr<xmlSchemaValidCtxt, decltype(&xmlSchemaFreeValidCtxt)> context(xmlSchemaNewValidCtxt(form.get()), xmlSchemaFreeValidCtxt);
  xmlSchemaSetValidErrors(context.get(), append_fault, append_fault, &faults);
  const int result = xmlSchemaValidateDoc(context.get(), document.get());
  return result == 0 ? "" : faults.empty() ? "not valid" : faults;
}

}  // namespace formats
