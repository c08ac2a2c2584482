// A value of the document that knows where it stands, so that a page can say beside every number which one it is (RFC
// 6901 pointer).
#pragma once

#include <string>

#include "reading.hpp"

namespace pictures {

using reports::Json;

class Ref {
 public:
  explicit Ref(const Json& root) : value_(&root) {}
  Ref operator[](const char* key) const { return {reports::member(*value_, key), pointer_ + '/' + key}; }
  Ref operator[](std::size_t index) const {
    return {reports::item(*value_, index), pointer_ + '/' + std::to_string(index)};
  }

  const Json& json() const { return *value_; }
  const std::string& pointer() const { return pointer_; }
  double number() const { return reports::number(*value_); }
  std::string text() const { return reports::raw_text(*value_); }
  std::size_t count() const { return value_->is_number_unsigned() ? value_->get<std::size_t>() : 0; }
  bool flag() const { return value_->is_boolean() && value_->get<bool>(); }
  bool is_list() const { return value_->is_array(); }
  std::size_t size() const { return value_->is_array() ? value_->size() : 0; }

 private:
  Ref(const Json& value, std::string pointer) : value_(&value), pointer_(std::move(pointer)) {}

  const Json* value_;
  std::string pointer_;
};

}  // namespace pictures
